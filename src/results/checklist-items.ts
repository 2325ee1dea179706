import type {Settings} from '../model/settings.ts'
import type {Exposure, Site} from '../model/study.ts'
import type {Analysis} from './analysis.ts'
import type {Asked, ChecklistItem} from './checklist.ts'
import {fluidsInUse, trapTypesInUse} from './equipment.ts'

type SettingOf<Key extends keyof Settings> = Exclude<
  NonNullable<Settings[Key]>[string & keyof NonNullable<Settings[Key]>],
  string
>
type TrapTypeKey = keyof SettingOf<'trap_types'> & string
type FluidKey = keyof SettingOf<'fluids'> & string

/**
 * What a pitfall study must report, merged from the published checklists: Brown & Matthews 2016, Hohbein & Conway
 * 2018, Skvarla et al. 2014, Montgomery et al. 2021, Woodcock 2005, Turney et al. 2015, Kotze et al. 2012.
 */
export const checklistItems: readonly ChecklistItem[] = [
  {
    id: 'target',
    item: 'target taxa and life stages',
    asked: ({
      study: {
        settings: {target}
      }
    }) => [
      ['groups sought', (target?.groups ?? []).length > 0],
      ['life stages counted', (target?.life_stages ?? []).length > 0],
      ['whether all that were found were recorded', target?.all_recorded !== undefined]
    ]
  },
  {
    id: 'sites',
    item: 'sites: region, coordinates, datum, uncertainty, elevation',
    asked: ({
      study: {
        settings: {place},
        sites
      }
    }) => [
      [
        'country or region',
        place?.country !== undefined ||
          place?.region !== undefined ||
          all(sites, 'country') ||
          all(sites, 'region')
      ],
      ['coordinates of every site', all(sites, 'latitude') && all(sites, 'longitude')],
      ['datum', place?.datum !== undefined || all(sites, 'datum')],
      ['uncertainty of the coordinates', all(sites, 'coordinateUncertaintyM')],
      ['elevation', all(sites, 'elevationM')]
    ]
  },
  {
    id: 'habitats',
    item: 'habitats and how sites were assigned to them; vegetation, litter, soil',
    asked: (analysis) => {
      const {sites} = analysis.study
      return [
        ['how sites were assigned', everyHabitat(analysis, 'assigned_by')],
        ['vegetation', everyHabitat(analysis, 'vegetation') || all(sites, 'vegetationHeightCm')],
        ['litter', everyHabitat(analysis, 'litter') || all(sites, 'litterDepthMm')],
        ['ground cover', all(sites, 'bareGroundPercent')],
        ['soil', everyHabitat(analysis, 'soil') || all(sites, 'soil')]
      ]
    }
  },
  {
    id: 'trap-mouth',
    item: 'trap shape, mouth diameter, nested cups',
    asked: (analysis) =>
      trapTypes(analysis, [
        ['shape', 'shape'],
        ['mouth diameter', 'rim_diameter_mm'],
        ['whether cups are nested', 'nested']
      ])
  },
  {
    id: 'depths',
    item: 'depth of trap and fluid',
    asked: (analysis) => [
      ...trapTypes(analysis, [['depth of the trap', 'depth_mm']]),
      ...fluids(analysis, [['depth of the fluid', 'depth_mm']])
    ]
  },
  {
    id: 'material',
    item: 'material and colour of the trap',
    asked: (analysis) =>
      trapTypes(analysis, [
        ['material', 'material'],
        ['colour', 'colour']
      ])
  },
  {id: 'funnel', item: 'funnel', asked: (analysis) => trapTypes(analysis, [['funnel or none', 'funnel']])},
  {
    id: 'cover',
    item: 'cover or roof',
    asked: (analysis) => trapTypes(analysis, [['cover or none', 'cover']])
  },
  {
    id: 'guard',
    item: 'guard mesh or cage',
    asked: (analysis) => trapTypes(analysis, [['guard or none', 'guard']])
  },
  {
    id: 'barrier',
    item: 'rim plate, drift fence or guidance barrier',
    asked: (analysis) =>
      trapTypes(analysis, [
        ['rim plate or none', 'rim_plate'],
        ['barrier or none', 'barrier']
      ])
  },
  {
    id: 'fluid',
    item: 'fluid: substance, dilution, volume, detergent, bittering agent, bait',
    asked: (analysis) =>
      fluids(analysis, [
        ['substance', 'substance'],
        ['dilution', 'dilution'],
        ['volume', 'volume_ml'],
        ['detergent or none', 'detergent'],
        ['bittering agent or none', 'bittering_agent'],
        ['bait or none', 'bait']
      ])
  },
  {
    id: 'layout',
    item: 'layout: traps at a site, sites in a habitat, geometry, spacing, distance to the edge',
    asked: ({
      area,
      study: {
        settings: {layout, site_selection: selection},
        sites
      }
    }) => [
      ['traps at each site', area.traps.length > 0],
      ['sites in each habitat', sites.length > 0],
      ['geometry', layout?.geometry !== undefined],
      ['spacing', layout?.spacing_m !== undefined],
      ['distance to the edge', layout?.edge_m !== undefined || all(sites, 'edgeDistanceM')],
      ['how sites were chosen', selection !== undefined]
    ]
  },
  {
    id: 'replicate',
    item: 'which level is the replicate',
    asked: ({unit}) => [[`the ${unit} is the sampling unit`, true]]
  },
  {
    id: 'settling',
    item: 'day of digging in and settling time before opening',
    asked: ({
      study: {
        settings: {protocol},
        traps
      }
    }) => {
      const installed = traps.length > 0 && traps.every((trap) => trap.installed !== undefined)
      return [
        ['day of digging in', installed],
        ['settling time', installed || protocol?.settling_nights !== undefined]
      ]
    }
  },
  {
    id: 'dates',
    item: 'dates of every opening and collection, and the interval',
    asked: ({study: {exposures}}) => [
      ['day of every collection', exposures.length > 0],
      ['day of every opening', exposures.length > 0 && exposures.every(({opened}) => opened !== undefined)]
    ]
  },
  {
    id: 'losses',
    item: 'traps lost, flooded or disturbed at each visit, and the rule applied to effort and catch',
    asked: ({study: {tables}}) => [
      ['state of every trap at every visit', hasColumn(tables, 'condition')],
      ['rule for effort and catch', true]
    ]
  },
  {
    id: 'effort',
    item: 'total effort: trap-nights by habitat, planned and achieved',
    asked: ({
      study: {
        exposures,
        settings: {protocol}
      }
    }) => [
      ['trap-nights achieved', exposures.some(({opened}) => opened !== undefined)],
      ['rounds and nights planned', protocol?.rounds !== undefined && protocol.interval_nights !== undefined]
    ]
  },
  {
    id: 'weather',
    item: 'season and weather during trapping',
    asked: ({study: {exposures, weather}}) => [
      ['season', exposures.length > 0],
      ['weather', weather.length > 0]
    ]
  },
  {
    id: 'sorting',
    item: 'groups sorted, subsampling, pooling',
    asked: ({
      pooled,
      study: {
        settings: {sorting, protocol}
      }
    }) => [
      ['groups sorted from the samples', (sorting?.groups_done ?? []).length > 0],
      ['part of each sample that was sorted', true],
      ['rule for pooling', protocol?.pooling !== undefined || !pooled]
    ]
  },
  {
    id: 'identification',
    item: 'identification: by whom, to which level, keys, nomenclature, morphospecies, verifier',
    asked: ({
      study: {
        settings: {identification: said},
        catch: records
      }
    }) => [
      [
        'who identified each record',
        records.length > 0 && records.every(({identifiedBy}) => identifiedBy !== undefined)
      ],
      ['level', said?.level !== undefined],
      ['keys', (said?.keys ?? []).length > 0],
      ['nomenclature or checklist', said?.nomenclature !== undefined || said?.checklist !== undefined],
      ['rule for morphospecies', said?.morphospecies !== undefined],
      [
        'who checked',
        said?.verifier !== undefined || records.some(({verifiedBy}) => verifiedBy !== undefined)
      ]
    ]
  },
  {
    id: 'vouchers',
    item: 'voucher specimens: where, which numbers, how kept',
    asked: ({
      study: {
        settings: {vouchers},
        catch: records
      }
    }) => [
      ['where and how vouchers are kept', vouchers !== undefined],
      ['voucher numbers', records.some(({voucher}) => voucher !== undefined)]
    ]
  },
  {
    id: 'bycatch',
    item: 'vertebrates and other animals caught by accident, and what became of them',
    asked: ({study: {settings, exposures}}) => [
      [
        'vertebrates caught',
        exposures.some(
          ({vertebratesCount, vertebratesWhat}) => (vertebratesCount ?? vertebratesWhat) !== undefined
        )
      ],
      ['what became of them', settings.bycatch_fate !== undefined || fateOfEveryVertebrate(exposures)]
    ]
  },
  {
    id: 'permits',
    item: 'permits and permission of the land owners',
    asked: ({
      study: {
        settings: {permits}
      }
    }) => [['permits and permissions', permits !== undefined]]
  },
  {
    id: 'analysis',
    item: 'analysis: orders of diversity, estimators, standardisation, models, permutations and seed',
    asked: () => [
      ['methods as computed', true],
      ['seed', true]
    ]
  },
  {
    id: 'limitations',
    item: 'limitations',
    asked: ({
      study: {
        settings: {limitations}
      }
    }) => [['limitations', limitations !== undefined]]
  },
  {
    id: 'data',
    item: 'availability of the raw counts, zeros included',
    asked: ({
      study: {
        settings: {licence}
      }
    }) => [
      ['raw records with zeros, in the archive', true],
      ['licence', licence !== undefined]
    ]
  }
]

function all<Key extends keyof Site>(sites: readonly Site[], key: Key): boolean {
  return sites.length > 0 && sites.every((site) => site[key] !== undefined)
}

function everyHabitat(
  {area, study: {settings}}: Analysis,
  key: 'assigned_by' | 'vegetation' | 'litter' | 'soil'
): boolean {
  return (
    area.habitats.length > 0 &&
    area.habitats.every(({id}) => {
      const stated = settings.habitats?.[id]
      return stated !== undefined && typeof stated !== 'string' && stated[key] !== undefined
    })
  )
}

function trapTypes(
  analysis: Analysis,
  wanted: readonly (readonly [what: string, key: TrapTypeKey])[]
): Asked[] {
  const inUse = trapTypesInUse(analysis)
  return wanted.map(([what, key]) => [
    what,
    inUse.length > 0 && inUse.every(({stated}) => stated[key] !== undefined)
  ])
}

function fluids(analysis: Analysis, wanted: readonly (readonly [what: string, key: FluidKey])[]): Asked[] {
  const inUse = fluidsInUse(analysis)
  return wanted.map(([what, key]) => [
    what,
    inUse.length > 0 && inUse.every(({stated}) => stated[key] !== undefined)
  ])
}

function hasColumn(tables: Analysis['study']['tables'], column: string): boolean {
  return tables.visits?.columns.has(column) ?? false
}

function fateOfEveryVertebrate(exposures: readonly Exposure[]): boolean {
  const found = exposures.filter(({vertebratesCount}) => (vertebratesCount ?? 0) > 0)
  return found.length > 0 && found.every(({vertebratesFate}) => vertebratesFate !== undefined)
}
