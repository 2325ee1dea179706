/**
 * Every column of every table, once: the reader parses by it, the rules check by it, the data dictionary and
 * the README print it.
 */
export type TableName = 'sites' | 'traps' | 'visits' | 'catch' | 'taxa' | 'weather'

export type ColumnKind =
  | 'id' // an identifier, compared as written after trimming
  | 'text'
  | 'day'
  | 'moment' // a day with an optional time
  | 'count' // a whole number, 0 or more
  | 'number'
  | 'fraction' // above 0, up to 1
  | 'latitude'
  | 'longitude'
  | 'word' // one of a fixed list

export interface Column {
  readonly name: string
  readonly kind: ColumnKind
  /** The column must be there, and its cells filled. */
  readonly required?: boolean
  /** A required column whose cell may be empty all the same: a rule then says what follows. */
  readonly mayBeEmpty?: boolean
  /** An unreadable cell sets its row aside, even where the column is optional: a guess would change a number. */
  readonly decisive?: boolean
  readonly unit?: string
  readonly words?: readonly string[]
  /** For the data dictionary: one sentence without its full stop. */
  readonly meaning: string
  /** What people head such a column with. Never read as it, only asked about: a guess would change a number. */
  readonly otherHeads?: readonly string[]
}

export interface TableDescription {
  readonly name: TableName
  readonly file: string
  /** What one row is, for the data dictionary. */
  readonly row: string
  readonly optional?: boolean
  readonly columns: readonly Column[]
}

export const conditionWords = [
  'intact',
  'diluted',
  'overflowed',
  'dry',
  'raised',
  'disturbed',
  'blocked',
  'spilled',
  'missing',
  'closed'
] as const
export type ConditionWord = (typeof conditionWords)[number]

export const sampleWords = ['sorted', 'empty', 'unsorted', 'lost'] as const
export type SampleWord = (typeof sampleWords)[number]

export const sexWords = ['female', 'male', 'undetermined'] as const
export const lifeStageWords = ['adult', 'larva', 'juvenile', 'pupa', 'egg', 'nymph', 'subadult'] as const
export const rimWords = ['flush', 'sunken', 'proud'] as const
export const coordinatesShownWords = ['exact', '0.001', '0.01', '0.1', 'none'] as const

/** Other heads of columns that stand in several tables. */
const otherHeads = {
  site_id: [
    'site',
    'site name',
    'plot',
    'plot id',
    'location',
    'station',
    ...['fläche', 'probefläche', 'standort', 'parcelle', 'placette', 'sitio', 'parcela', 'locatie', 'lokal']
  ],
  trap_id: [
    'trap',
    'trap no',
    'trap nr',
    'trap number',
    'trap code',
    'pitfall',
    'cup',
    ...['falle', 'fallen nr', 'fallennummer', 'becher', 'piège', 'trampa', 'armadilha', 'val', 'fälla']
  ],
  collected: [
    'emptied',
    'date emptied',
    'date out',
    'date collected',
    'collection date',
    'end',
    'end date',
    'to',
    'date',
    'pick up',
    ...[
      'geleert',
      'leerung',
      'geleert am',
      'datum',
      'bis',
      'ende',
      'relevé',
      'date de relevé',
      'fin',
      'fecha',
      'recogida'
    ]
  ],
  taxon: [
    'species',
    'species name',
    'scientific name',
    'latin name',
    'name',
    'taxon name',
    'taxa',
    ...['art', 'artname', 'espèce', 'especie', 'soort', 'specie', 'espécie']
  ],
  latitude: ['lat', 'decimal latitude'],
  longitude: ['lon', 'long', 'lng', 'decimal longitude']
} as const

/** Of a site, or of a trap. */
const position: readonly Column[] = [
  {
    name: 'latitude',
    kind: 'latitude',
    unit: 'degrees',
    meaning: 'decimal degrees north',
    otherHeads: otherHeads.latitude
  },
  {
    name: 'longitude',
    kind: 'longitude',
    unit: 'degrees',
    meaning: 'decimal degrees east',
    otherHeads: otherHeads.longitude
  }
]

const remarks: Column = {
  name: 'remarks',
  kind: 'text',
  meaning: 'anything else, as written in the field or at the bench'
}

export const tables: Readonly<Record<TableName, TableDescription>> = {
  sites: {
    name: 'sites',
    file: 'sites.csv',
    row: 'one row per site',
    columns: [
      {
        name: 'site_id',
        kind: 'id',
        required: true,
        meaning: 'short name of the site, used in every other table',
        otherHeads: otherHeads.site_id
      },
      {
        name: 'habitat',
        kind: 'id',
        required: true,
        meaning: 'habitat of the site, one of the habitats of study.yaml',
        otherHeads: [
          'habitat type',
          'vegetation type',
          'veg type',
          'treatment',
          'land use',
          ...['lebensraum', 'biotop', 'biotoptyp', 'milieu', 'biotope']
        ]
      },
      {name: 'site_name', kind: 'text', meaning: 'name of the site for readers'},
      {name: 'country', kind: 'text', meaning: 'country'},
      {name: 'region', kind: 'text', meaning: 'region, county or province'},
      {name: 'locality', kind: 'text', meaning: 'nearest named place'},
      ...position,
      {name: 'datum', kind: 'text', meaning: 'geodetic datum of the coordinates'},
      {
        name: 'coordinate_uncertainty_m',
        kind: 'number',
        unit: 'm',
        meaning: 'radius that surely holds the whole site'
      },
      {name: 'elevation_m', kind: 'number', unit: 'm', meaning: 'height above sea level'},
      {name: 'block', kind: 'id', meaning: 'block of the design to which the site belongs'},
      {name: 'owner', kind: 'text', meaning: 'who owns or manages the land'},
      {
        name: 'coordinates_shown',
        kind: 'word',
        words: coordinatesShownWords,
        decisive: true,
        meaning: 'how finely others may see the position, in degrees'
      },
      {
        name: 'management',
        kind: 'text',
        meaning: 'how the land is used, and what the findings may mean for that'
      },
      {name: 'soil', kind: 'text', meaning: 'soil'},
      {
        name: 'vegetation_height_cm',
        kind: 'number',
        unit: 'cm',
        meaning: 'height of the vegetation round the traps'
      },
      {name: 'litter_depth_mm', kind: 'number', unit: 'mm', meaning: 'depth of the litter'},
      {name: 'bare_ground_percent', kind: 'number', unit: '%', meaning: 'share of bare ground'},
      {name: 'canopy_percent', kind: 'number', unit: '%', meaning: 'canopy cover'},
      {
        name: 'edge_distance_m',
        kind: 'number',
        unit: 'm',
        meaning: 'distance to the nearest edge of the habitat'
      },
      {
        name: 'traps',
        kind: 'count',
        meaning: 'number of traps, in old data that have no table of traps'
      },
      {
        name: 'trap_nights',
        kind: 'number',
        decisive: true,
        unit: 'trap-nights',
        meaning: 'effort of the whole season, in old data that have no visits'
      },
      remarks
    ]
  },
  traps: {
    name: 'traps',
    file: 'traps.csv',
    row: 'one row per trap',
    columns: [
      {
        name: 'trap_id',
        kind: 'id',
        required: true,
        meaning: 'short name of the trap',
        otherHeads: otherHeads.trap_id
      },
      {
        name: 'site_id',
        kind: 'id',
        required: true,
        meaning: 'site where the trap stands',
        otherHeads: otherHeads.site_id
      },
      {name: 'trap_type', kind: 'id', meaning: 'one of the trap types of study.yaml'},
      {name: 'fluid', kind: 'id', meaning: 'one of the fluids of study.yaml'},
      ...position,
      {name: 'x_m', kind: 'number', unit: 'm', meaning: 'metres east of the corner of the site'},
      {name: 'y_m', kind: 'number', unit: 'm', meaning: 'metres north of the corner of the site'},
      {name: 'installed', kind: 'day', meaning: 'day on which the trap was dug in'},
      {name: 'removed', kind: 'day', meaning: 'day on which the trap was taken out and its hole filled'},
      remarks
    ]
  },
  visits: {
    name: 'visits',
    file: 'visits.csv',
    row: 'one row per trap exposure, from opening to collection',
    columns: [
      {name: 'trap_id', kind: 'id', required: true, meaning: 'trap', otherHeads: otherHeads.trap_id},
      {
        name: 'opened',
        kind: 'moment',
        required: true,
        mayBeEmpty: true,
        meaning: 'when the trap was opened or emptied the time before',
        otherHeads: [
          'set',
          'set on',
          'date set',
          'date in',
          'date opened',
          'open',
          'start',
          'start date',
          'from',
          ...[
            'geöffnet',
            'geöffnet am',
            'aufgestellt',
            'von',
            'beginn',
            'pose',
            'date de pose',
            'début',
            'inicio'
          ]
        ]
      },
      {
        name: 'collected',
        kind: 'moment',
        required: true,
        meaning: 'when the catch was collected',
        otherHeads: otherHeads.collected
      },
      {
        name: 'condition',
        kind: 'word',
        words: conditionWords,
        decisive: true,
        meaning: 'state in which the trap was found; empty means intact',
        otherHeads: ['state', 'status', 'trap condition', 'trap status', 'zustand', 'état', 'estado']
      },
      {
        name: 'failed_on',
        kind: 'moment',
        decisive: true,
        meaning: 'when the trap failed, where that is known'
      },
      {
        name: 'sample',
        kind: 'word',
        words: sampleWords,
        decisive: true,
        meaning: 'what became of the collection'
      },
      {name: 'round', kind: 'id', meaning: 'round of the season'},
      {name: 'rim', kind: 'word', words: rimWords, meaning: 'how the rim stood to the soil'},
      {name: 'fluid', kind: 'id', meaning: "fluid of this exposure, where it differs from the trap's"},
      {name: 'fluid_left_mm', kind: 'number', unit: 'mm', meaning: 'depth of the fluid found'},
      {name: 'cover_state', kind: 'text', meaning: 'state of the cover'},
      {name: 'collected_by', kind: 'text', meaning: 'who collected'},
      {name: 'sorted_by', kind: 'text', meaning: 'who sorted'},
      {name: 'sorted_on', kind: 'day', meaning: 'day of sorting'},
      {name: 'vertebrates_count', kind: 'count', meaning: 'vertebrates found in the trap'},
      {name: 'vertebrates_what', kind: 'text', meaning: 'which vertebrates'},
      {name: 'vertebrates_fate', kind: 'text', meaning: 'what became of them'},
      remarks
    ]
  },
  catch: {
    name: 'catch',
    file: 'catch.csv',
    row: 'one row per taxon, sex and life stage of one collection',
    columns: [
      {
        name: 'trap_id',
        kind: 'id',
        required: true,
        mayBeEmpty: true,
        meaning: 'trap; may be empty for a catch pooled in the field',
        otherHeads: otherHeads.trap_id
      },
      {
        name: 'collected',
        kind: 'moment',
        required: true,
        mayBeEmpty: true,
        meaning: 'when the catch was collected; may be empty for a catch pooled in the field',
        otherHeads: otherHeads.collected
      },
      {
        name: 'taxon',
        kind: 'id',
        required: true,
        meaning: 'name as identified',
        otherHeads: otherHeads.taxon
      },
      {
        name: 'count',
        kind: 'count',
        required: true,
        meaning: 'individuals counted',
        otherHeads: [
          'n',
          'no',
          '#',
          'number',
          'individuals',
          'individual count',
          'no of individuals',
          'number of individuals',
          'abundance',
          'total',
          'quantity',
          ...['anzahl', 'individuen', 'nombre', 'effectif', 'número', 'aantal']
        ]
      },
      {
        name: 'site_id',
        kind: 'id',
        meaning: 'site, for catches pooled in the field',
        otherHeads: otherHeads.site_id
      },
      {name: 'round', kind: 'id', meaning: 'round, for catches pooled in the field'},
      {
        name: 'pooled_traps',
        kind: 'count',
        decisive: true,
        meaning: 'how many traps were pooled in the field'
      },
      {
        name: 'sex',
        kind: 'word',
        words: sexWords,
        meaning: 'sex',
        otherHeads: ['gender', 'geschlecht', 'sexe', 'sexo']
      },
      {
        name: 'life_stage',
        kind: 'word',
        words: lifeStageWords,
        decisive: true,
        meaning: 'life stage; empty means adult',
        otherHeads: ['stage', 'stadium', 'stade']
      },
      {name: 'wing_form', kind: 'text', meaning: 'wing form, such as macropterous or brachypterous'},
      {name: 'qualifier', kind: 'text', meaning: 'doubt about the name, such as cf.'},
      {name: 'identified_by', kind: 'text', meaning: 'who identified'},
      {name: 'identified_on', kind: 'day', meaning: 'day of identification'},
      {name: 'verified_by', kind: 'text', meaning: 'who checked the identification'},
      {
        name: 'sample_fraction',
        kind: 'fraction',
        decisive: true,
        meaning: 'part of the sample that was sorted'
      },
      {name: 'vial', kind: 'id', meaning: 'label of the vial'},
      {name: 'voucher', kind: 'text', meaning: 'number of the voucher specimen'},
      remarks
    ]
  },
  taxa: {
    name: 'taxa',
    file: 'taxa.csv',
    row: 'one row per name used in the catch',
    optional: true,
    columns: [
      {
        name: 'taxon',
        kind: 'id',
        required: true,
        meaning: 'name as used in the catch',
        otherHeads: otherHeads.taxon
      },
      {name: 'rank', kind: 'text', meaning: 'rank of the name; morphospecies allowed'},
      {name: 'class', kind: 'text', meaning: 'class'},
      {name: 'order', kind: 'text', meaning: 'order'},
      {name: 'family', kind: 'text', meaning: 'family'},
      {name: 'genus', kind: 'text', meaning: 'genus'},
      {name: 'authority', kind: 'text', meaning: 'author and year of the name'},
      {name: 'english_name', kind: 'text', meaning: 'everyday name'},
      {name: 'guild', kind: 'text', meaning: 'feeding guild or another grouping of the study'},
      {name: 'body_length_mm', kind: 'number', unit: 'mm', meaning: 'typical body length'},
      {name: 'red_list', kind: 'text', meaning: 'red-list category'},
      {name: 'legal_status', kind: 'text', meaning: 'legal protection'},
      {
        name: 'sensitive',
        kind: 'word',
        words: ['1', '2', '3', '4'],
        decisive: true,
        meaning: 'sensitivity category, 1 (extreme) to 4 (low), Chapman 2020'
      },
      {name: 'accepted_name', kind: 'text', meaning: 'accepted name, where this one is a synonym'},
      {name: 'note', kind: 'text', meaning: 'a line for readers about this kind'}
    ]
  },
  weather: {
    name: 'weather',
    file: 'weather.csv',
    row: 'one row per day',
    optional: true,
    columns: [
      {name: 'date', kind: 'day', required: true, meaning: 'day', otherHeads: ['day']},
      {name: 'rain_mm', kind: 'number', unit: 'mm', meaning: 'rain of the day'},
      {name: 'temp_min_c', kind: 'number', unit: 'degrees Celsius', meaning: 'lowest temperature'},
      {name: 'temp_max_c', kind: 'number', unit: 'degrees Celsius', meaning: 'highest temperature'}
    ]
  }
}

export const tableNames = Object.keys(tables) as readonly TableName[]
