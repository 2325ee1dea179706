import type {RuleCode} from '../../src/rules/index.ts'
import {csvText} from '../example-season/csv-text.ts'
import {
  appended,
  asBytes,
  both,
  cell,
  type Edit,
  isLike,
  onlyTraps,
  parsed,
  replaced,
  rows,
  textOf,
  withFile,
  without,
  withoutColumns
} from './twin-edits.ts'

/** One slip in the clean twin, and all that is found then: place, severity and rule. */
export interface Slip {
  readonly edit: Edit
  readonly found: readonly string[]
}

const visit = (trap: string, opened: string) => ({trap_id: trap, opened})
const caught = (trap: string, collected: string, taxon: string) => ({trap_id: trap, collected, taxon})

/** Visits that caught nothing, so that what happens to them takes no catch along. */
const emptyInFirstRound = visit('OAK2-4', '2025-04-14')
const emptyInLastRound = visit('OAK2-3', '2025-07-21')
const firstAbax = caught('OAK1-1', '2025-04-28', 'Abax parallelepipedus')
const rainyDay = {date: '2025-05-14'}

const fluid = (substance: string) =>
  replaced('study.yaml', 'substance: propylene glycol', `substance: ${substance}`)

/** A wide table: one row for each collection, one column for each taxon, and empty cells for what was not there. */
const wideCatch: Edit = (files) => {
  const {data} = parsed(files, 'catch.csv')
  const taxa = [...new Set(data.map(({taxon = ''}) => taxon))].sort()
  const collections = new Map<string, Record<string, string | number>>()
  for (const {trap_id = '', collected = '', taxon = '', count} of data) {
    const key = `${trap_id} ${collected}`
    const row = collections.get(key) ?? {trap_id, collected}
    collections.set(key, row)
    row[taxon] = Number(row[taxon] ?? 0) + Number(count)
  }
  return withFile(files, 'catch.csv', csvText(['trap_id', 'collected', ...taxa], [...collections.values()]))
}

/** Sites and traps in one file, where two lines of one site do not agree. */
const sitesWithTraps: Edit = (files) => {
  const sites = parsed(files, 'sites.csv').data
  const lines = parsed(files, 'traps.csv').data.map((trap) => {
    const {remarks: _, ...site} = sites.find((one) => one.site_id === trap.site_id) ?? {}
    return {...site, ...trap, ...(trap.trap_id === 'OAK1-2' && {soil: 'another soil'})}
  })
  return without('traps.csv')(withFile(files, 'sites.csv', csvText(Object.keys(lines[0]!), lines)))
}

/** The twin as old data: sums by site and one effort figure for each site but the first. */
const asOldData: Edit = (files) => {
  const sums = new Map<string, {site_id: string; taxon: string; life_stage: string; count: number}>()
  for (const {trap_id = '', taxon = '', life_stage = '', count} of parsed(files, 'catch.csv').data) {
    const site_id = trap_id.split('-')[0] ?? ''
    const key = [site_id, taxon, life_stage].join()
    const sum = sums.get(key) ?? {site_id, taxon, life_stage, count: 0}
    sums.set(key, {...sum, count: sum.count + Number(count)})
  }
  const records = [...sums.values()].map((sum) => ({...sum, count: String(sum.count)}))
  const withEffort = rows('sites', (row, at) => ({...row, trap_nights: at === 0 ? '' : '672'}))(files)
  return without('traps.csv')(
    without('visits.csv')(
      withFile(withEffort, 'catch.csv', csvText(['site_id', 'taxon', 'life_stage', 'count'], records))
    )
  )
}

/** For every rule one way to break the twin. Where one slip takes other rows with it, all of it is listed. */
export const slips: Readonly<Record<RuleCode, Slip>> = {
  'invalid-setting': {
    edit: replaced('study.yaml', 'confidence: 0.95', 'confidence: 95'),
    found: ['study.yaml:186:15 error invalid-setting']
  },
  'unknown-setting': {
    edit: replaced('study.yaml', '\nfunding:', '\nfundings:'),
    found: ['study.yaml:26:1 caution unknown-setting']
  },
  'site-without-effort': {
    edit: asOldData,
    found: ['sites.csv:2:321 caution site-without-effort']
  },
  'judgement-without-effect': {
    edit: replaced(
      'study.yaml',
      '\nfunding:',
      '\nrules: {unknown-trap: {severity: note, reason: by plan}}\nfunding:'
    ),
    found: ['study.yaml:26:9 caution judgement-without-effect']
  },
  'encoding-guessed': {
    edit: asBytes('taxa.csv', (text) => Buffer.from(text, 'latin1')),
    found: ['taxa.csv note encoding-guessed']
  },
  'lines-passed-over': {
    edit: replaced('traps.csv', 'trap_id,site_id', 'The traps of 2025\ntrap_id,site_id'),
    found: ['traps.csv note lines-passed-over']
  },
  'unknown-column': {
    edit: replaced('weather.csv', 'temp_max_c', 'maximum'),
    found: ['weather.csv:1:25 note unknown-column']
  },
  'duplicate-column': {
    edit: replaced('weather.csv', 'temp_max_c', 'rain_mm'),
    found: ['weather.csv:1:25 caution duplicate-column']
  },
  'unclosed-quote': {
    edit: replaced('weather.csv', '2025-05-14,', '"2025-05-14,'),
    found: ['weather.csv:39:1 error unclosed-quote']
  },
  'totals-row': {
    edit: appended('weather.csv', 'Total,612.5,,'),
    found: ['weather.csv:122:1 note totals-row']
  },
  'nameless-column': {
    edit: replaced('weather.csv', 'temp_min_c', ''),
    found: ['weather.csv:2:16 note nameless-column']
  },
  'ragged-row': {
    edit: replaced('weather.csv', '2025-05-14,', '2025-05-14,9,9,'),
    found: ['weather.csv:39:1 error ragged-row']
  },
  'empty-required-cell': {
    edit: cell('weather', rainyDay, 'date', ''),
    found: ['weather.csv:39:1 error empty-required-cell']
  },
  'ambiguous-date': {
    edit: cell('weather', rainyDay, 'date', '05/06/2025'),
    found: ['weather.csv:39:1 error ambiguous-date']
  },
  'unreadable-date': {
    edit: cell('traps', {trap_id: 'OAK1-2'}, 'removed', 'autumn'),
    found: ['traps.csv:3:37 caution unreadable-date']
  },
  'count-not-whole': {
    edit: cell('catch', firstAbax, 'count', '1*'),
    found: ['catch.csv:2:41 error count-not-whole']
  },
  'ambiguous-number': {
    edit: both(
      replaced('study.yaml', '\ndecimal: point', '\n# decimal: point'),
      cell('weather', rainyDay, 'rain_mm', '1.234')
    ),
    found: ['weather.csv:39:12 caution ambiguous-number']
  },
  'unreadable-number': {
    edit: cell('weather', rainyDay, 'rain_mm', 'a lot'),
    found: ['weather.csv:39:12 caution unreadable-number']
  },
  'coordinate-off-the-map': {
    edit: cell('sites', {site_id: 'HAY2'}, 'latitude', '155.40060'),
    found: ['sites.csv:6:53 caution coordinate-off-the-map']
  },
  'blank-cells': {
    edit: both(replaced('study.yaml', '  shape: long', '  shape: wide'), wideCatch),
    found: ['catch.csv:2:21 caution blank-cells']
  },
  'cells-disagree': {
    edit: both(replaced('study.yaml', '\ndecimal:', '\nfiles: {traps: sites.csv}\ndecimal:'), sitesWithTraps),
    found: ['sites.csv note cells-disagree']
  },
  'name-settled': {
    edit: cell('catch', firstAbax, 'taxon', 'abax Parallelepipedus'),
    found: ['catch.csv:2:19 note name-settled']
  },
  'unknown-condition': {
    edit: cell('visits', emptyInFirstRound, 'condition', 'intakt'),
    found: ['visits.csv:23:30 error unknown-condition']
  },
  'unknown-word': {
    edit: cell('catch', {...firstAbax}, 'sex', 'femal'),
    found: ['catch.csv:2:43 caution unknown-word']
  },
  'unknown-habitat': {
    edit: cell('sites', {site_id: 'HAY2'}, 'habitat', 'hey'),
    found: [
      'catch.csv:72:1 error row-of-something-set-aside',
      'sites.csv:3:6 note few-sites-in-a-habitat',
      'sites.csv:6:6 error unknown-habitat',
      'traps.csv:26:8 error row-of-something-set-aside',
      'visits.csv:26:1 error row-of-something-set-aside'
    ]
  },
  'unknown-site': {
    edit: cell('traps', {trap_id: 'OAK1-2'}, 'site_id', 'OAK11'),
    found: [
      'catch.csv:5:1 error row-of-something-set-aside',
      'traps.csv:3:8 error unknown-site',
      'visits.csv:3:1 error row-of-something-set-aside'
    ]
  },
  'unknown-trap': {
    edit: cell('catch', firstAbax, 'trap_id', 'OAK1-11'),
    found: ['catch.csv:2:1 error unknown-trap']
  },
  'unknown-trap-type-or-fluid': {
    edit: cell('traps', {trap_id: 'OAK1-2'}, 'trap_type', 'cups'),
    found: ['traps.csv:3:13 caution unknown-trap-type-or-fluid']
  },
  'duplicate-id': {
    edit: appended('taxa.csv', 'Xysticus cristatus,species,Arachnida,Araneae,Thomisidae,Xysticus,,,,,,,,,'),
    found: ['taxa.csv:57:1 error duplicate-id']
  },
  'duplicate-visit': {
    edit: appended(
      'visits.csv',
      'OAK2-4,2025-04-14,2025-04-28,intact,,empty,R1,flush,25,in place,Hazel Underhedge,Hazel Underhedge,2025-05-22,0,,,'
    ),
    found: ['visits.csv:578:1 error duplicate-visit']
  },
  'visit-without-opening-date': {
    edit: cell('visits', emptyInFirstRound, 'opened', ''),
    found: ['visits.csv:23:8 caution visit-without-opening-date']
  },
  'visit-ends-before-it-starts': {
    edit: cell('visits', emptyInFirstRound, 'opened', '2025-04-29'),
    found: ['visits.csv:23:19 error visit-ends-before-it-starts']
  },
  'visit-outside-season': {
    edit: cell('visits', emptyInFirstRound, 'opened', '2025-04-10'),
    found: ['visits.csv:23:8 error visit-outside-season']
  },
  'failure-outside-visit': {
    edit: cell('visits', emptyInFirstRound, 'failed_on', '2025-04-02'),
    found: ['visits.csv:23:37 error failure-outside-visit']
  },
  'overlapping-visits': {
    edit: cell('visits', visit('OAK1-1', '2025-04-28'), 'opened', '2025-04-20'),
    found: ['catch.csv:2:8 error row-of-something-set-aside', 'visits.csv:74:8 error overlapping-visits']
  },
  'catch-without-trap': {
    edit: cell('catch', firstAbax, 'trap_id', ''),
    found: ['catch.csv:2:1 error catch-without-trap']
  },
  'catch-without-visit': {
    edit: cell('catch', firstAbax, 'collected', '2025-04-29'),
    found: ['catch.csv:2:8 error catch-without-visit']
  },
  'duplicate-catch-row': {
    edit: appended('catch.csv', 'OAK1-2,2025-04-28,Abax parallelepipedus,1,,,,Hazel Underhedge,,,'),
    found: ['catch.csv:2914:19 error duplicate-catch-row']
  },
  'row-of-something-set-aside': {
    edit: appended('traps.csv', 'BAR4-6,BAR4,cup,pg,1,2,2025-04-07,2025-08-04,'),
    found: [
      'catch.csv:260:1 error row-of-something-set-aside',
      'traps.csv:74:1 error duplicate-id',
      'visits.csv:73:1 error row-of-something-set-aside'
    ]
  },
  'repeated-catch-entry': {
    edit: appended('catch.csv', 'OAK1-2,2025-04-28,Abax parallelepipedus,2,,,,Hazel Underhedge,,,'),
    found: ['catch.csv:2914:19 caution repeated-catch-entry']
  },
  'visit-without-catch-record': {
    edit: cell('visits', emptyInFirstRound, 'sample', ''),
    found: ['visits.csv:23:8 error visit-without-catch-record']
  },
  'catch-in-unsampled-visit': {
    edit: cell('visits', visit('OAK1-1', '2025-04-14'), 'sample', 'empty'),
    found: ['visits.csv:2:38 caution catch-in-unsampled-visit']
  },
  'taxon-not-in-taxa-table': {
    edit: cell('catch', firstAbax, 'taxon', 'Abax parallelepidus'),
    found: ['catch.csv:2:19 caution taxon-not-in-taxa-table']
  },
  'no-taxa-table': {edit: without('taxa.csv'), found: ['taxa.csv note no-taxa-table']},
  'nothing-caught': {
    edit: both(
      rows('catch', () => undefined),
      rows('visits', (row) => ({...row, sample: 'empty'}))
    ),
    found: ['catch.csv caution nothing-caught']
  },

  'gap-between-visits': {
    edit: cell('visits', visit('OAK1-3', '2025-05-26'), 'opened', '2025-05-29'),
    found: ['visits.csv:220:8 caution gap-between-visits']
  },
  'traps-missing-from-round': {
    edit: rows('visits', (row) => (isLike(row, emptyInLastRound) ? undefined : row)),
    found: ['traps.csv:22:1 caution traps-missing-from-round']
  },
  'interval-far-from-protocol': {
    edit: cell('visits', emptyInFirstRound, 'opened', '2025-04-20'),
    found: ['visits.csv:23:8 caution interval-far-from-protocol']
  },
  'interval-far-from-the-others': {
    edit: both(
      replaced('study.yaml', '  interval_nights: 14\n', ''),
      cell('visits', emptyInFirstRound, 'opened', '2025-04-26')
    ),
    found: ['visits.csv:23:8 caution interval-far-from-the-others']
  },
  'pooled-traps-disagree': {
    edit: rows('catch', (row) => {
      if (!row.trap_id?.startsWith('OAK1-') || row.collected !== firstAbax.collected) return row
      return isLike(row, firstAbax)
        ? {...row, trap_id: '', collected: '', site_id: 'OAK1', round: 'R1', pooled_traps: '9'}
        : undefined
    }),
    found: ['catch.csv:2:83 caution pooled-traps-disagree']
  },
  'sorted-part-missing': {
    edit: cell('catch', firstAbax, 'sample_fraction', '0.5'),
    found: ['catch.csv:3:90 caution sorted-part-missing']
  },
  'habitat-spelled-two-ways': {
    edit: both(
      (files) =>
        withFile(
          files,
          'study.yaml',
          textOf(files, 'study.yaml').replace(/^habitats:[\s\S]*?(?=^[a-z])/m, '')
        ),
      cell('sites', {site_id: 'OAK1'}, 'habitat', 'Oak')
    ),
    found: ['sites.csv:2:6 caution few-sites-in-a-habitat', 'sites.csv:2:6 caution habitat-spelled-two-ways']
  },
  'taxon-spelled-two-ways': {
    edit: both(
      cell('catch', firstAbax, 'taxon', 'Abax paralelepipedus'),
      appended('taxa.csv', 'Abax paralelepipedus,,Insecta,Coleoptera,Carabidae,Abax,,,,,,,,,')
    ),
    found: ['catch.csv:2:19 caution taxon-spelled-two-ways']
  },
  'rank-against-name': {
    edit: cell('taxa', {taxon: 'Cychrus caraboides'}, 'rank', 'genus'),
    found: ['taxa.csv:18:20 caution rank-against-name']
  },
  'implausible-body-length': {
    edit: cell('taxa', {taxon: 'Cychrus caraboides'}, 'body_length_mm', '160'),
    found: ['taxa.csv:18:97 caution implausible-body-length']
  },
  'impossible-sex-or-stage': {
    edit: cell('catch', firstAbax, 'life_stage', 'nymph'),
    found: ['catch.csv:2:44 caution impossible-sex-or-stage']
  },
  'count-outlier': {
    edit: cell('catch', caught('OAK1-5', '2025-04-28', 'Notiophilus biguttatus'), 'count', '33'),
    found: ['catch.csv:15:42 note count-outlier']
  },
  'vertebrate-in-catch': {
    edit: both(
      cell('catch', firstAbax, 'taxon', 'Sorex araneus'),
      appended('taxa.csv', 'Sorex araneus,species,Mammalia,Eulipotyphla,Soricidae,Sorex,,,,,,,,,')
    ),
    found: ['catch.csv:2:19 caution vertebrate-in-catch']
  },
  'swapped-coordinates': {
    edit: both(
      cell('sites', {site_id: 'HAY2'}, 'latitude', '3.21330'),
      cell('sites', {site_id: 'HAY2'}, 'longitude', '55.40060')
    ),
    found: ['sites.csv:6:53 caution swapped-coordinates']
  },
  'sites-at-one-position': {
    edit: both(
      cell('sites', {site_id: 'HAY2'}, 'latitude', '55.39840'),
      cell('sites', {site_id: 'HAY2'}, 'longitude', '3.19600')
    ),
    found: ['sites.csv:6:53 caution sites-at-one-position']
  },
  'site-far-from-the-others': {
    edit: cell('sites', {site_id: 'HAY2'}, 'latitude', '56.40060'),
    found: ['sites.csv:6:53 caution site-far-from-the-others']
  },
  'coarse-coordinates': {
    edit: rows('sites', (row, at) => ({...row, latitude: `55.${40 + at}`, longitude: '3.2'})),
    found: ['sites.csv:2:53 note coarse-coordinates']
  },
  'traps-closer-than-laid-out': {
    edit: cell('traps', {trap_id: 'HAY1-2'}, 'x_m', '10'),
    found: ['traps.csv:9:20 note traps-closer-than-laid-out']
  },
  'sensitive-taxon-shown-exactly': {
    edit: cell('sites', {site_id: 'OAK3'}, 'coordinates_shown', 'exact'),
    found: ['sites.csv:8:110 note sensitive-taxon-shown-exactly']
  },
  'person-not-listed': {
    edit: cell('visits', emptyInFirstRound, 'sorted_by', 'Hazel Overhedge'),
    found: ['visits.csv:23:82 note person-not-listed']
  },
  'invalid-orcid': {
    edit: replaced('study.yaml', '    # orcid: 0000-0002-1825-0097 ', '    orcid: 0000-0002-1825-0079 '),
    found: ['study.yaml:18:12 caution invalid-orcid']
  },
  'unusual-licence': {
    edit: replaced('study.yaml', 'licence: CC0-1.0', 'licence: CC0'),
    found: ['study.yaml:11:10 caution unusual-licence']
  },

  'confounded-with-habitat': {
    edit: both(
      replaced('study.yaml', '\nfluids: ', '\nfluids:\n  brine: {substance: brine}\n#'),
      rows('traps', (row) => (row.site_id?.startsWith('HAY') ? {...row, fluid: 'brine'} : row))
    ),
    found: ['traps.csv:8:17 caution confounded-with-habitat']
  },
  'unequal-intervals': {
    edit: both(
      replaced('study.yaml', '\n  interval_nights: 14', ''),
      rows('visits', (row) =>
        row.round === 'R8' && row.trap_id?.startsWith('HAY') ? {...row, opened: '2025-07-28'} : row
      )
    ),
    found: ['visits.csv:506:8 caution unequal-intervals']
  },
  'losses-differ-between-habitats': {
    edit: rows('visits', (row) =>
      /^HAY.-1$/.test(row.trap_id ?? '') ? {...row, condition: 'disturbed'} : row
    ),
    found: ['visits.csv:8:30 caution losses-differ-between-habitats']
  },
  'incomplete-array-visit': {
    edit: rows('visits', (row) =>
      row.round === 'R2' && /^OAK1-[34]$/.test(row.trap_id ?? '') ? {...row, condition: 'disturbed'} : row
    ),
    found: ['visits.csv:76:30 note incomplete-array-visit']
  },
  'few-sites-in-a-habitat': {
    edit: both(
      rows('sites', (row) => (row.site_id === 'HAY4' ? undefined : row)),
      onlyTraps((trapId) => !trapId.startsWith('HAY4'))
    ),
    found: ['sites.csv:3:6 note few-sites-in-a-habitat']
  },
  'few-traps-at-a-site': {
    edit: onlyTraps((trapId) => !/^OAK2-[56]$/.test(trapId)),
    found: ['sites.csv:5:1 caution few-traps-at-a-site']
  },
  'traps-close-together': {
    edit: replaced('study.yaml', 'spacing_m: 30', 'spacing_m: 10'),
    found: ['study.yaml:101:14 note traps-close-together']
  },
  'short-season': {
    edit: both(
      rows('visits', (row) => (row.round === 'R1' ? row : undefined)),
      rows('catch', (row) => (row.collected === '2025-04-28' ? row : undefined))
    ),
    found: ['visits.csv caution short-season']
  },
  'short-settling': {
    edit: cell('traps', {trap_id: 'OAK1-2'}, 'installed', '2025-04-13'),
    found: ['traps.csv:3:26 caution short-settling']
  },
  'unusual-rim-diameter': {
    edit: replaced('study.yaml', 'rim_diameter_mm: 80', 'rim_diameter_mm: 150'),
    found: ['study.yaml:76:22 caution unusual-rim-diameter']
  },
  'open-cups-in-heavy-rain': {
    edit: both(
      replaced('study.yaml', 'drainage: four holes of 2 mm, 25 mm below the rim', 'drainage: false'),
      replaced(
        'study.yaml',
        'cover: square of brown plywood, 150 mm wide, 30 mm above the rim',
        'cover: false'
      ),
      cell('weather', rainyDay, 'rain_mm', '45.0')
    ),
    found: ['study.yaml:83:12 note open-cups-in-heavy-rain']
  },
  'rim-not-flush': {
    edit: cell('visits', emptyInFirstRound, 'rim', 'proud'),
    found: ['visits.csv:23:47 caution rim-not-flush']
  },
  'interval-too-long-for-fluid': {
    edit: fluid('70 % ethanol'),
    found: ['study.yaml:90:5 caution interval-too-long-for-fluid']
  },
  'unusual-dilution': {
    edit: replaced('study.yaml', 'dilution: "1:2"', 'dilution: "1:9"'),
    found: ['study.yaml:91:15 note unusual-dilution']
  },
  'unusual-fluid-depth': {
    edit: replaced('study.yaml', '    depth_mm: 30 ', '    depth_mm: 95 '),
    found: ['study.yaml:93:15 note unusual-fluid-depth']
  },
  'glycol-of-unknown-kind': {
    edit: fluid('plumbing antifreeze'),
    found: ['study.yaml:90:16 caution glycol-of-unknown-kind']
  },
  'hazardous-fluid': {edit: fluid('ethylene glycol'), found: ['study.yaml:90:16 caution hazardous-fluid']},
  'habitat-structure-not-recorded': {
    edit: withoutColumns('sites', [
      'vegetation_height_cm',
      'litter_depth_mm',
      'bare_ground_percent',
      'canopy_percent'
    ]),
    found: ['sites.csv note habitat-structure-not-recorded']
  },
  'vertebrates-not-recorded': {
    edit: withoutColumns('visits', ['vertebrates_count', 'vertebrates_what', 'vertebrates_fate']),
    found: ['visits.csv note vertebrates-not-recorded']
  }
}
