import type {Column} from '../column.ts'

/** Other heads of columns that stand in several tables. */
export const otherHeads = {
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
export const position = [
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
] as const satisfies readonly Column[]

export const remarks = {
  name: 'remarks',
  kind: 'text',
  meaning: 'anything else, as written in the field or at the bench'
} as const satisfies Column
