import {csvText} from './csv-text.ts'

export type Habitat = 'oak' | 'hay' | 'barley'

export interface Site {
  readonly site_id: string
  readonly habitat: Habitat
  readonly site_name: string
  readonly country: string
  readonly region: string
  readonly locality: string
  readonly latitude: string
  readonly longitude: string
  readonly datum: string
  readonly coordinate_uncertainty_m: number
  readonly elevation_m: number
  readonly block: string
  readonly owner: string
  readonly coordinates_shown?: string
  readonly management: string
  readonly soil: string
  readonly vegetation_height_cm: number
  readonly litter_depth_mm: number
  readonly bare_ground_percent: number
  readonly canopy_percent: number
  readonly edge_distance_m: number
  readonly remarks?: string
}

const valley = {country: 'Tarnmark', region: 'Quill valley', datum: 'WGS84', coordinate_uncertainty_m: 100}

/**
 * The four farms are the blocks, and each gives one site of every habitat: four sites a habitat, and habitat
 * cannot be mistaken for a part of the valley. The coordinates lie in the open North Sea, so that no real
 * field, wood or farm is meant.
 */
export const sites: readonly Site[] = [
  {
    ...valley,
    site_id: 'OAK1',
    habitat: 'oak',
    site_name: 'Fold Wood',
    locality: 'Upper Fold',
    latitude: '55.40340',
    longitude: '3.20080',
    elevation_m: 182,
    block: 'upper-fold',
    owner: 'Upper Fold Farm',
    management:
      'Old coppice, not cut since about 1960 and fenced against sheep. Fallen branches and deep litter are where the large wood beetles hide by day: leaving them lie costs nothing.',
    soil: 'stony brown earth',
    vegetation_height_cm: 15,
    litter_depth_mm: 45,
    bare_ground_percent: 5,
    canopy_percent: 80,
    edge_distance_m: 60
  },
  {
    ...valley,
    site_id: 'HAY1',
    habitat: 'hay',
    site_name: 'Fold Meadow',
    locality: 'Upper Fold',
    latitude: '55.39840',
    longitude: '3.19600',
    elevation_m: 151,
    block: 'upper-fold',
    owner: 'Upper Fold Farm',
    management:
      'One cut of hay in mid July, sheep from August to November, farmyard manure every third year. A late cut lets the young spiders of June grow up before the grass goes.',
    soil: 'clay loam',
    vegetation_height_cm: 40,
    litter_depth_mm: 8,
    bare_ground_percent: 3,
    canopy_percent: 0,
    edge_distance_m: 35
  },
  {
    ...valley,
    site_id: 'BAR1',
    habitat: 'barley',
    site_name: 'Fold Top Field',
    locality: 'Upper Fold',
    latitude: '55.39790',
    longitude: '3.20520',
    elevation_m: 158,
    block: 'upper-fold',
    owner: 'Upper Fold Farm',
    management:
      'Ploughed in February, spring barley sown in March, weeds sprayed once in May. Many field beetles spend the winter in the hedge bank, so a bank left unploughed feeds the field in spring.',
    soil: 'sandy loam',
    vegetation_height_cm: 60,
    litter_depth_mm: 1,
    bare_ground_percent: 45,
    canopy_percent: 0,
    edge_distance_m: 25
  },
  {
    ...valley,
    site_id: 'OAK2',
    habitat: 'oak',
    site_name: 'Badger Holt',
    locality: 'Longacre',
    latitude: '55.40560',
    longitude: '3.21820',
    elevation_m: 170,
    block: 'longacre',
    owner: 'Longacre Farm',
    management:
      'High oak wood over bramble, a few trees felled each winter. Small clearings bring in spiders of sunny litter; the deep shade between them suits the snail-eaters.',
    soil: 'brown earth over shale',
    vegetation_height_cm: 30,
    litter_depth_mm: 38,
    bare_ground_percent: 8,
    canopy_percent: 70,
    edge_distance_m: 50,
    remarks: 'badger paths cross the line between traps 2 and 5'
  },
  {
    ...valley,
    site_id: 'HAY2',
    habitat: 'hay',
    site_name: 'Long Meadow',
    locality: 'Longacre',
    latitude: '55.40060',
    longitude: '3.21330',
    elevation_m: 133,
    block: 'longacre',
    owner: 'Longacre Farm',
    management:
      'Hay cut in the third week of July, no fertiliser since 2012, cattle in autumn. The uncut strip along the ditch gives the beetles somewhere to go at mowing.',
    soil: 'silty clay',
    vegetation_height_cm: 35,
    litter_depth_mm: 10,
    bare_ground_percent: 4,
    canopy_percent: 0,
    edge_distance_m: 30
  },
  {
    ...valley,
    site_id: 'BAR2',
    habitat: 'barley',
    site_name: 'Longacre Field',
    locality: 'Longacre',
    latitude: '55.40010',
    longitude: '3.22280',
    elevation_m: 141,
    block: 'longacre',
    owner: 'Longacre Farm',
    coordinates_shown: 'none',
    management:
      'Spring barley after turnips, ploughed in February. No insecticide was used in 2025, and beetles that eat aphids and slugs are a reason to try that again.',
    soil: 'loam',
    vegetation_height_cm: 65,
    litter_depth_mm: 1,
    bare_ground_percent: 40,
    canopy_percent: 0,
    edge_distance_m: 25,
    remarks: 'the owner asked that the position be kept back'
  },
  {
    ...valley,
    site_id: 'OAK3',
    habitat: 'oak',
    site_name: 'Hanger Wood',
    locality: 'Quillbeck',
    latitude: '55.40420',
    longitude: '3.23560',
    elevation_m: 149,
    block: 'quillbeck',
    owner: 'Quillbeck Farm',
    management:
      'Steep damp oak wood, never clear-felled as far as anyone knows, with mossy trunks and much dead wood. It needs nothing done to it, and above all no tidying.',
    soil: 'wet brown earth',
    vegetation_height_cm: 20,
    litter_depth_mm: 52,
    bare_ground_percent: 4,
    canopy_percent: 85,
    edge_distance_m: 70
  },
  {
    ...valley,
    site_id: 'HAY3',
    habitat: 'hay',
    site_name: 'Beck Meadow',
    locality: 'Quillbeck',
    latitude: '55.39920',
    longitude: '3.23090',
    elevation_m: 108,
    block: 'quillbeck',
    owner: 'Quillbeck Farm',
    management:
      'Low meadow by the beck, cut in late July, under water for a few days in most winters. Wet hollows suit beetles that a drained meadow loses, so the old ditches are best left as they are.',
    soil: 'alluvial clay',
    vegetation_height_cm: 45,
    litter_depth_mm: 12,
    bare_ground_percent: 2,
    canopy_percent: 0,
    edge_distance_m: 30,
    remarks: 'lowest site of the study'
  },
  {
    ...valley,
    site_id: 'BAR3',
    habitat: 'barley',
    site_name: 'Quillbeck Field',
    locality: 'Quillbeck',
    latitude: '55.39870',
    longitude: '3.24030',
    elevation_m: 118,
    block: 'quillbeck',
    owner: 'Quillbeck Farm',
    management:
      'Spring barley with a grass strip six metres wide along the ditch. The strip is a winter home for the beetles that hunt in the crop.',
    soil: 'silty loam',
    vegetation_height_cm: 70,
    litter_depth_mm: 2,
    bare_ground_percent: 35,
    canopy_percent: 0,
    edge_distance_m: 25
  },
  {
    ...valley,
    site_id: 'OAK4',
    habitat: 'oak',
    site_name: 'Mill Oaks',
    locality: 'Millrace',
    latitude: '55.40790',
    longitude: '3.25120',
    elevation_m: 126,
    block: 'millrace',
    owner: 'Millrace Farm',
    coordinates_shown: '0.001',
    management:
      'Grazed oak wood, cattle in summer until 2019 and none since; the ground layer is still thin. Litter is building up again, which the beetles of deep litter need.',
    soil: 'stony loam',
    vegetation_height_cm: 12,
    litter_depth_mm: 24,
    bare_ground_percent: 12,
    canopy_percent: 65,
    edge_distance_m: 45
  },
  {
    ...valley,
    site_id: 'HAY4',
    habitat: 'hay',
    site_name: 'Mill Holme',
    locality: 'Millrace',
    latitude: '55.40290',
    longitude: '3.24650',
    elevation_m: 97,
    block: 'millrace',
    owner: 'Millrace Farm',
    management:
      'Dry meadow on river gravel, one cut in mid July, aftermath grazed by sheep. The short, open sward is warm, which is what the seed-eating beetles like.',
    soil: 'sandy loam over gravel',
    vegetation_height_cm: 25,
    litter_depth_mm: 5,
    bare_ground_percent: 9,
    canopy_percent: 0,
    edge_distance_m: 30
  },
  {
    ...valley,
    site_id: 'BAR4',
    habitat: 'barley',
    site_name: 'Mill Field',
    locality: 'Millrace',
    latitude: '55.40240',
    longitude: '3.25590',
    elevation_m: 102,
    block: 'millrace',
    owner: 'Millrace Farm',
    management:
      'Spring barley undersown with clover, no plough since 2018. Soil that is not turned keeps the grubs of the autumn beetles alive.',
    soil: 'sandy loam',
    vegetation_height_cm: 55,
    litter_depth_mm: 4,
    bare_ground_percent: 30,
    canopy_percent: 0,
    edge_distance_m: 25
  }
]

export function sitesCsv(): string {
  return csvText(
    [
      'site_id',
      'habitat',
      'site_name',
      'country',
      'region',
      'locality',
      'latitude',
      'longitude',
      'datum',
      'coordinate_uncertainty_m',
      'elevation_m',
      'block',
      'owner',
      'coordinates_shown',
      'management',
      'soil',
      'vegetation_height_cm',
      'litter_depth_mm',
      'bare_ground_percent',
      'canopy_percent',
      'edge_distance_m',
      'remarks'
    ],
    sites
  )
}
