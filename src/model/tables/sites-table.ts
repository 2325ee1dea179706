import type {TableDescription} from '../column.ts'
import {coordinatesShownWords} from '../column-words.ts'
import {otherHeads, position, remarks} from './shared-columns.ts'

export const sitesTable = {
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
} as const satisfies TableDescription
