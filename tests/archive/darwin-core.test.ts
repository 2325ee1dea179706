import {execFileSync} from 'node:child_process'
import {readFileSync, writeFileSync} from 'node:fs'
import {join} from 'node:path'
import {describe, expect, test} from 'vitest'
import {temporaryFolder} from '../files/study-on-disk.ts'
import {testWith} from '../needs.ts'
import {archivedFiles, textOf} from './archive-on-disk.ts'
import {checkDarwinCore, rowsOf, rowTypesOf, termsOf} from './check-darwin-core.ts'
import {publishedSchema} from './published-schemas.ts'
import {openStudy, privateStudy} from './small-study.ts'

const visit = (trap: string, day: string) => `two-places-2026:visit:${trap}:2026-${day}`

test('events, occurrences, measurements and scope fit each other and meta.xml in every study', async () => {
  for (const study of [
    openStudy,
    privateStudy,
    {...openStudy, 'study.yaml': openStudy['study.yaml']!.replace(/target: .*\n/, '')}
  ])
    expect(checkDarwinCore((await archivedFiles(study)).files)).toEqual([])
})

testWith('the published schemas')(
  'every term is one of the published Darwin Core and Humboldt lists',
  async () => {
    const published = new Set(
      ['dwc-terms.txt', 'eco-terms.txt'].flatMap((name) =>
        readFileSync(publishedSchema(name), 'utf8').trim().split('\n')
      )
    )
    const {files} = await archivedFiles(openStudy)
    const terms = termsOf(files).map(({term}) => term)
    expect(terms.length).toBeGreaterThan(80)
    for (const term of terms) expect([...published]).toContain(term)
    // The class of the Humboldt rows is that of the registered extension, which the list of terms does not repeat.
    expect(rowTypesOf(files).filter((rowType) => !published.has(rowType))).toEqual([
      'http://rs.tdwg.org/eco/terms/Event'
    ])
  }
)

testWith('xmllint', 'the published schemas')(
  'meta.xml is valid by the published text guide, and a broken one is not',
  async () => {
    const {files} = await archivedFiles(openStudy)
    expect(await lint('dwc-text-offline.xsd', textOf(files, 'data/dwca/meta.xml'))).toBe(true)
    expect(
      await lint('dwc-text-offline.xsd', textOf(files, 'data/dwca/meta.xml').replace(/rowType="[^"]+"/, ''))
    ).toBe(false)
  }
)

testWith('xmllint', 'the published schemas')(
  'eml.xml is valid by the published EML 2.2.0 and GBIF profile 1.3, and a broken one is not',
  async () => {
    for (const study of [openStudy, privateStudy, bareStudy()]) {
      const text = textOf((await archivedFiles(study)).files, 'data/dwca/eml.xml')
      expect(await lint('eml-2.2.0/eml.xsd', text)).toBe(true)
      expect(await lint(gbifProfile(), text)).toBe(true)
    }
    const text = textOf((await archivedFiles(openStudy)).files, 'data/dwca/eml.xml')
    expect(await lint('eml-2.2.0/eml.xsd', text.replace(/<contact>[\s\S]*<\/contact>/, ''))).toBe(false)
  }
)

/** The least that a study may say. */
function bareStudy(): Readonly<Record<string, string>> {
  return {
    'study.yaml': 'title: T\nanalysis: {replicates: 10, permutations: 99}\n',
    'sites.csv': 'site_id,habitat\nA,x\n',
    'traps.csv': 'trap_id,site_id\nA1,A\n',
    'visits.csv': 'trap_id,opened,collected,sample\nA1,2026-05-04,2026-05-18,sorted\n',
    'catch.csv': 'trap_id,collected,taxon,count\nA1,2026-05-18,Carabus nemoralis,1\n'
  }
}

/** The profile imports a schema of XML's own from the network; the copy beside EML is the same. */
function gbifProfile(): string {
  const folder = temporaryFolder()
  for (const name of ['eml-gbif-profile.xsd', 'eml.xsd', 'dc.xsd']) {
    const text = readFileSync(publishedSchema(`eml-gbif-profile-1.3/${name}`), 'utf8')
    writeFileSync(
      join(folder, name),
      text.replace(
        /schemaLocation="[^"]*xml\.xsd"/g,
        `schemaLocation="${publishedSchema('eml-2.2.0/xml.xsd')}"`
      )
    )
  }
  return join(folder, 'eml.xsd')
}

async function lint(schema: string, text: string): Promise<boolean> {
  const file = join(temporaryFolder(), 'file.xml')
  writeFileSync(file, text)
  try {
    execFileSync(
      'xmllint',
      ['--noout', '--nonet', '--schema', schema.startsWith('/') ? schema : publishedSchema(schema), file],
      {stdio: 'pipe'}
    )
    return true
  } catch {
    return false
  }
}

test('the events are season, site, trap and exposure, each inside its parent, with effort on exposures alone', async () => {
  const events = new Map(
    rowsOf((await archivedFiles(openStudy)).files, 'data/dwca/event.csv').map((row) => [row.eventID!, row])
  )
  expect(events.get('two-places-2026')).toMatchObject({
    eventType: 'project',
    eventDate: '2026-05-04/2026-06-01',
    parentEventID: ''
  })
  expect(events.get('two-places-2026:site:W1')).toMatchObject({
    parentEventID: 'two-places-2026',
    habitat: 'old wood',
    countryCode: 'DE',
    locality: 'Nordheim',
    decimalLatitude: '51.2034',
    coordinateUncertaintyInMeters: '20',
    geodeticDatum: 'EPSG:4326',
    minimumElevationInMeters: '210',
    dataGeneralizations: '',
    informationWithheld: ''
  })
  expect(events.get('two-places-2026:trap:W1-1')).toMatchObject({
    parentEventID: 'two-places-2026:site:W1',
    decimalLatitude: '51.20341'
  })
  expect(events.get('two-places-2026:trap:W1-2')).toMatchObject({decimalLatitude: '51.2034'})
  expect(events.get(visit('W1-1', '05-18'))).toMatchObject({
    parentEventID: 'two-places-2026:trap:W1-1',
    eventType: 'trapVisit',
    eventDate: '2026-05-04/2026-05-18',
    sampleSizeValue: '14',
    sampleSizeUnit: 'day',
    samplingEffort: '1 trap, 14 trap-nights'
  })
  expect(events.get(visit('W1-2', '05-18'))).toMatchObject({
    samplingEffort: '1 trap, 7 trap-nights of 14 nights open',
    eventRemarks: 'trap found overflowed; after the storm'
  })
  expect(events.get(visit('W1-1', '06-01'))).toMatchObject({
    sampleSizeValue: '',
    samplingEffort: '',
    eventRemarks: 'trap found missing, sample lost; dug out by a badger'
  })
  expect(events.get(visit('W1-2', '06-01'))).toMatchObject({
    sampleSizeValue: '14',
    samplingEffort: '1 trap, 14 trap-nights, sample not sorted yet'
  })
})

test('only empty traps that were intact or diluted are recorded as absences', async () => {
  const {files} = await archivedFiles(openStudy)
  const absent = rowsOf(files, 'data/dwca/occurrence.csv').filter((row) => row.occurrenceStatus === 'absent')
  const intact = [visit('M1-1', '05-18'), visit('M1-2', '05-18')]
  expect(absent.map((row) => [row.eventID, row.scientificName, row.taxonRank, row.individualCount])).toEqual(
    intact.flatMap((event) => [
      [event, 'Carabidae', 'family', '0'],
      [event, 'Araneae', 'order', '0']
    ])
  )
  const scopes = new Map(rowsOf(files, 'data/dwca/humboldt.csv').map((row) => [row.eventID!, row]))
  for (const event of intact)
    expect(scopes.get(event)).toMatchObject({
      isAbsenceReported: 'true',
      absentTaxa: 'Carabidae | Araneae',
      isTaxonomicScopeFullyReported: 'true',
      samplingEffortValue: '14'
    })
  // Overflowed and empty, missing, not sorted: silence says nothing.
  for (const event of [visit('M1-2', '06-01'), visit('W1-1', '06-01'), visit('W1-2', '06-01')])
    expect(scopes.get(event)).toMatchObject({
      isAbsenceReported: 'false',
      absentTaxa: '',
      isTaxonomicScopeFullyReported: 'false'
    })
})

test('of all the states in which an empty trap is found, absence is recorded of two', async () => {
  const states = ['', 'intact', 'diluted', 'overflowed', 'dry', 'raised', 'disturbed', 'blocked', 'spilled']
  const own = ['missing', 'closed', 'tilted']
  const day = (week: number) => new Date(Date.UTC(2026, 4, 4 + 7 * week)).toISOString().slice(0, 10)
  const rows = [...states, ...own].map((state, week) => `M1-1,${day(week)},${day(week + 1)},${state},empty\n`)
  const {files} = await archivedFiles({
    ...openStudy,
    'study.yaml': `${openStudy['study.yaml']}conditions: {tilted: {credit: 1}}\n`,
    'visits.csv': `trap_id,opened,collected,condition,sample\n${rows.join('')}`,
    'catch.csv': 'trap_id,collected,taxon,count\n'
  })
  expect(checkDarwinCore(files)).toEqual([])
  const absent = rowsOf(files, 'data/dwca/occurrence.csv').filter((row) => row.occurrenceStatus === 'absent')
  expect([...new Set(absent.map((row) => row.eventID))]).toEqual(
    [1, 2, 3].map((week) => `two-places-2026:visit:M1-1:${day(week)}`)
  )
  // The first says nothing of its state, which means intact.
  expect(states.slice(0, 3)).toEqual(['', 'intact', 'diluted'])
})

test('the scope is that of study.yaml, and completeness is claimed only as far as it goes', async () => {
  const scopesOf = async (settings: string) =>
    new Map(
      rowsOf(
        (await archivedFiles({...openStudy, 'study.yaml': settings})).files,
        'data/dwca/humboldt.csv'
      ).map((row) => [row.eventID!, row])
    )
  const yaml = openStudy['study.yaml']!
  const whole = await scopesOf(yaml)
  for (const row of whole.values())
    expect(row).toMatchObject({targetTaxonomicScope: 'Carabidae | Araneae', targetLifeStageScope: 'adult'})
  expect(whole.get('two-places-2026')).toMatchObject({siteCount: '2', isTaxonomicScopeFullyReported: 'true'})
  expect(whole.get(visit('W1-1', '05-18'))).toMatchObject({
    isTaxonomicScopeFullyReported: 'true',
    hasNonTargetTaxa: 'true',
    hasVouchers: 'true',
    samplingPerformedBy: 'Ada Ash',
    samplingEffortUnit: 'trapDays',
    eventDurationValue: '14'
  })
  // Half of the sample was sorted, so that a kind may have been missed.
  expect(whole.get(visit('M1-1', '06-01'))).toMatchObject({
    isTaxonomicScopeFullyReported: 'false',
    hasNonTargetTaxa: 'false'
  })
  expect(whole.get(visit('M1-2', '05-18'))).toMatchObject({hasNonTargetTaxa: 'true'})
  const part = await scopesOf(yaml.replace('all_recorded: true', 'all_recorded: false'))
  for (const row of part.values())
    expect(row).toMatchObject({
      isTaxonomicScopeFullyReported: expect.stringMatching(/^(false)?$/),
      absentTaxa: ''
    })
  const unsaid = await scopesOf(
    yaml.replace(', all_recorded: true', '').replace(', life_stages: [adult]', '')
  )
  for (const row of unsaid.values()) {
    expect(row).toMatchObject({
      isTaxonomicScopeFullyReported: expect.stringMatching(/^(false)?$/),
      absentTaxa: ''
    })
    expect(row.targetLifeStageScope).toBeUndefined()
  }
})

describe('an occurrence', () => {
  const occurrences = async (study = openStudy) =>
    rowsOf((await archivedFiles(study)).files, 'data/dwca/occurrence.csv')

  test('has the lowest name that is certain, and beside it what was written', async () => {
    const named = new Map(
      (await occurrences()).map((row) => [row.verbatimIdentification || row.scientificName!, row])
    )
    expect(named.get('Amara cf. familiaris')).toMatchObject({
      scientificName: 'Amara',
      taxonRank: 'genus',
      identificationQualifier: 'cf. familiaris',
      scientificNameAuthorship: ''
    })
    expect(named.get('Amara sp. 1')).toMatchObject({
      scientificName: 'Amara',
      taxonRank: 'genus',
      identificationQualifier: '',
      dynamicProperties: '{"wingForm":"macropterous"}'
    })
    expect(named.get('Feronia cuprea')).toMatchObject({
      scientificName: 'Poecilus cupreus',
      scientificNameAuthorship: '(Linnaeus, 1758)',
      lifeStage: 'larva',
      genus: 'Poecilus'
    })
    expect(named.get('Carabus problematicus')).toMatchObject({
      scientificName: 'Carabus problematicus',
      taxonRank: 'species',
      family: 'Carabidae',
      identifiedByID: 'https://orcid.org/0000-0002-1825-0097',
      dateIdentified: '2026-07-01',
      recordedBy: 'Ada Ash'
    })
  })

  test('keeps its id when rows are sorted otherwise, and the sums are those of the records', async () => {
    const rows = await occurrences()
    const [header = '', ...lines] = openStudy['catch.csv']!.trimEnd().split('\n')
    const sorted = await occurrences({
      ...openStudy,
      'catch.csv': [header, ...lines.reverse()].map((line) => `${line}\n`).join('')
    })
    const ids = (list: typeof rows) => list.map((row) => `${row.occurrenceID} ${row.individualCount}`).sort()
    expect(ids(sorted)).toEqual(ids(rows))
    expect(rows.reduce((sum, row) => sum + Number(row.individualCount), 0)).toBe(
      3 + 2 + 1 + 7 + 4 + 12 + 2 + 1
    )
    expect(
      rows.find((row) => row.scientificName === 'Pardosa amentata' && row.individualCount === '12')
    ).toMatchObject({occurrenceRemarks: 'counted in 0.5 of the sample'})
    expect(rows.find((row) => row.catalogNumber === 'TP-1')).toMatchObject({
      basisOfRecord: 'PreservedSpecimen',
      sex: 'female'
    })
  })
})

test('traps tipped together in the field are an event of their own, which has the catch and the effort', async () => {
  const pooled = {
    ...openStudy,
    'visits.csv':
      'trap_id,opened,collected,condition,sample,round\nW1-1,2026-05-04,2026-05-18,,sorted,1\nW1-2,2026-05-04,2026-05-18,,sorted,1\nM1-1,2026-05-04,2026-05-18,,empty,1\n',
    'catch.csv':
      'trap_id,collected,taxon,count,site_id,round,pooled_traps\n,,Carabus problematicus,5,W1,1,2\n'
  }
  const {files} = await archivedFiles(pooled)
  expect(checkDarwinCore(files)).toEqual([])
  const events = new Map(rowsOf(files, 'data/dwca/event.csv').map((row) => [row.eventID!, row]))
  const pool = 'two-places-2026:pool:W1:1'
  expect(events.get(pool)).toMatchObject({
    parentEventID: 'two-places-2026:site:W1',
    eventType: 'pooledCollection',
    samplingEffort: '2 traps pooled, 28 trap-nights together'
  })
  expect(events.get(visit('W1-1', '05-18'))).toMatchObject({
    sampleSizeValue: '',
    eventRemarks: 'the catch was pooled with that of other traps'
  })
  expect(
    rowsOf(files, 'data/dwca/occurrence.csv').filter((row) => row.individualCount === '5')
  ).toMatchObject([{eventID: pool}])
  const scopes = new Map(rowsOf(files, 'data/dwca/humboldt.csv').map((row) => [row.eventID!, row]))
  expect(scopes.get(pool)).toMatchObject({isTaxonomicScopeFullyReported: 'true', samplingEffortValue: '28'})
  expect(scopes.get(visit('W1-1', '05-18'))).toMatchObject({
    isTaxonomicScopeFullyReported: 'false',
    samplingEffortValue: ''
  })
})

test('old data with one effort figure for each site are one catch for each site, of which nothing more is claimed', async () => {
  const old = {
    'study.yaml': openStudy['study.yaml']!.replace(
      'people:',
      'season: {start: 1987-05-01, end: 1987-09-30}\npeople:'
    ).replace('two-places\n', 'old\n'),
    'sites.csv':
      'site_id,habitat,trap_nights,latitude,longitude\nA,wood,840,51.2,9.1\nB,meadow,420,51.3,9.2\n',
    'catch.csv': 'site_id,taxon,count\nA,Carabus problematicus,12\nB,Pardosa amentata,3\n',
    'taxa.csv': openStudy['taxa.csv']!
  }
  const {files} = await archivedFiles(old)
  expect(checkDarwinCore(files)).toEqual([])
  const events = rowsOf(files, 'data/dwca/event.csv')
  expect(
    events.map((row) => [
      row.eventID,
      row.parentEventID,
      row.eventType,
      row.samplingEffort,
      row.sampleSizeValue
    ])
  ).toEqual([
    ['old-1987', '', 'project', '', ''],
    ['old-1987:site:A', 'old-1987', 'siteSeason', '', ''],
    ['old-1987:catch:A', 'old-1987:site:A', 'siteCatch', '840 trap-nights of the whole site', ''],
    ['old-1987:site:B', 'old-1987', 'siteSeason', '', ''],
    ['old-1987:catch:B', 'old-1987:site:B', 'siteCatch', '420 trap-nights of the whole site', '']
  ])
  const scopes = new Map(rowsOf(files, 'data/dwca/humboldt.csv').map((row) => [row.eventID!, row]))
  expect(scopes.get('old-1987:catch:A')).toMatchObject({
    samplingEffortValue: '840',
    samplingEffortUnit: 'trapDays',
    eventDurationValue: '',
    isTaxonomicScopeFullyReported: '',
    isAbsenceReported: 'false'
  })
  expect(rowsOf(files, 'data/dwca/measurement.csv')).toEqual([])
})
