import {expect, test} from 'vitest'
import {countingErrorMethod} from '../../src/model/counting-error.ts'
import {isDefined} from '../../src/model/quantity.ts'
import {type Results, resultsSchema} from '../../src/model/results.ts'
import type {Cell, ReportTable} from '../../src/report/table.ts'
import {tableDefinitions} from '../../src/report/tables/index.ts'
import {comparedHabitats, refused} from './compared-habitats.ts'
import {twoHabitats} from './two-habitats.ts'

function tableOf(name: string, results: Results = comparedHabitats): ReportTable {
  const found = tableDefinitions
    .flatMap((definition) => definition.tables({results, findings: []}))
    .find((table) => table.name === name)
  if (found === undefined) throw new Error(`there is no table ${name}`)
  return found
}

/** What a cell says, with numbers as they are. */
function said(cell: Cell | undefined): string | number {
  switch (cell?.type) {
    case 'measure':
      return isDefined(cell.measure) ? cell.measure.value : cell.measure.notDefined
    case 'interval':
      return isDefined(cell.measure) ? `${cell.measure.interval?.low} to ${cell.measure.interval?.high}` : ''
    case 'text':
      return cell.text
    case 'taxon':
      return cell.taxon
    default:
      return ''
  }
}

const rowsOf = (name: string, results?: Results) => tableOf(name, results).rows.map((row) => row.map(said))
const headsOf = (name: string, results?: Results) => tableOf(name, results).columns.map(({head}) => head)

/** The scope, changed. */
function withScope(change: Partial<Results['scopes'][number]>): Results {
  return {...comparedHabitats, scopes: comparedHabitats.scopes.map((scope) => ({...scope, ...change}))}
}

test('the made-up results are such as results.json may hold', () => {
  expect(resultsSchema.parse(comparedHabitats)).toEqual(comparedHabitats)
  expect(resultsSchema.parse(refused(['it rained']))).toEqual(refused(['it rained']))
})

test.each(
  tableDefinitions.flatMap((definition) => definition.tables({results: comparedHabitats, findings: []}))
)('$name has a cell for each column in every row and in its foot', (table) => {
  for (const row of [...table.rows, ...(table.foot ?? [])]) expect(row).toHaveLength(table.columns.length)
})

test('a rate ratio stands with its interval, degrees of freedom, adjusted p and the ratio without one site', () => {
  expect(rowsOf('rate-ratios')).toEqual([
    ['all names', 'barley field to oak wood', 8, 0.5, '0.31 to 0.81', 3, 0.012, 'Top Field', 0.61],
    [
      'ground beetles, adults',
      'barley field to oak wood',
      8,
      0.5,
      '0.31 to 0.81',
      3,
      0.012,
      'Top Field',
      0.61
    ]
  ])
})

test('a comparison that was refused has tables without rows, which say why', () => {
  const results = refused(['no habitat has more than one site'])
  for (const name of [
    'rate-ratios',
    'model-tests',
    'coefficients',
    'residuals',
    'composition-tests',
    'indicators-beetles'
  ]) {
    expect(tableOf(name, results).rows).toEqual([])
    expect(tableOf(name, results).empty).toBe('Not compared, because no habitat has more than one site.')
  }
})

test('no test is listed without the number of arrangements behind its p and the smallest p they allow', () => {
  for (const name of ['model-tests', 'composition-tests']) {
    expect(headsOf(name).slice(-4)).toEqual(['Distinct arrangements', 'Tried', 'How', 'Smallest p possible'])
    for (const row of rowsOf(name)) expect(row.slice(-4)).toEqual([35, 35, 'all', 1 / 35])
  }
})

test('more arrangements than can be counted are said to be so', () => {
  const [scope] = comparedHabitats.scopes
  const {composition} = scope!
  const {permanova} = composition
  const distinct = {...permanova.permutations.distinct, value: Number.MAX_SAFE_INTEGER}
  const many = {...permanova, permutations: {...permanova.permutations, distinct, exhaustive: false}}
  const results = withScope({composition: {...composition, permanova: many}})
  expect(rowsOf('composition-tests', results)[0]?.slice(-4, -1)).toEqual([
    'more than 9,000,000,000,000,000',
    35,
    'drawn at random'
  ])
})

test('the test of composition is followed by the test of spread', () => {
  expect(rowsOf('composition-tests').map((row) => row.slice(0, 8))).toEqual([
    ['ground beetles, adults', 'composition', 8, 0.61, 9.4, 1, 6, 1 / 35],
    ['ground beetles, adults', 'spread alone', 8, '', 1.3, 1, 6, 0.31]
  ])
})

test('each habitat at equal coverage is followed by its sites, which have no intervals', () => {
  const rows = rowsOf('equal-coverage-beetles')
  expect(rows.map(([habitat, of]) => `${habitat}: ${of}`)).toEqual([
    'oak wood: all its sites, pooled',
    'oak wood: Fold Wood',
    'oak wood: Badger Holt',
    'barley field: all its sites, pooled',
    'barley field: Top Field'
  ])
  expect(rows[0]?.slice(2)).toEqual([40, 'beyond the catch', 9.5, '7 to 13', 5, '4 to 6', 3, '2 to 4'])
  expect(rows[1]?.slice(2)).toEqual([40, 'within the catch', 6, '', 4, '', 2.5, ''])
})

test('without a common coverage the table says why', () => {
  const coverage = {
    label: 'coverage',
    kind: 'coverage',
    notDefined: 'only one habitat has any catch'
  } as const
  const results = withScope({equalCoverage: {coverage, habitats: [], leftOut: [], sites: []}})
  expect(tableOf('equal-coverage-beetles', results).empty).toBe(
    'There is no common coverage, because only one habitat has any catch.'
  )
})

test('diversity is divided by order, and beta of order 0 keeps its caution', () => {
  const table = tableOf('partition-beetles')
  expect(table.rows.map((row) => row.map(said))).toEqual([
    ['between habitats', 2, 'all species (q = 0)', 5, 1.5, 8],
    ['between habitats', 2, 'common species (q = 1)', 4, 1.75, 7],
    ['between habitats', 2, 'dominant species (q = 2)', 3, 2, 6]
  ])
  const beta = table.rows[0]?.[4]
  expect(beta?.type === 'measure' && 'caution' in beta.measure).toBe(true)
})

test('dissimilarities are listed pair by pair from their triangles', () => {
  expect(rowsOf('dissimilarity-sites-beetles')).toEqual([
    ['Fold Wood', 'Badger Holt', 0.1, 0.1, 0, 0.18, 0.2],
    ['Fold Wood', 'Top Field', 0.8, 0.6, 0.2, 0.89, 0.7],
    ['Badger Holt', 'Top Field', 0.9, 0.65, 0.25, 0.95, 0.75]
  ])
  expect(rowsOf('dissimilarity-habitats-beetles')).toEqual([
    ['oak wood', 'barley field', 0.8, 0.6, 0.2, 0.89, 0.7]
  ])
  expect(tableOf('dissimilarity-habitats-beetles').foot?.[0]?.map(said)).toEqual([
    'All together',
    '',
    0.8,
    0.6,
    0.2,
    '',
    ''
  ])
})

test('sites too many to be listed in pairs have no rows and a reason', () => {
  const [scope] = comparedHabitats.scopes
  const {sites} = scope!.dissimilarities
  const empty = {
    ...sites,
    notListed: 'there are more than 60 sites',
    sorensen: [],
    jaccard: [],
    brayCurtis: [],
    turnover: [],
    nestedness: []
  }
  const table = tableOf(
    'dissimilarity-sites-beetles',
    withScope({dissimilarities: {...scope!.dissimilarities, sites: empty}})
  )
  expect(table.rows).toEqual([])
  expect(table.empty).toBe('Not listed, because there are more than 60 sites.')
})

test('an indicator value stands with what it is made of, and with p only where p is given', () => {
  expect(rowsOf('indicators-beetles')).toEqual([
    ['Poecilus cupreus', 'barley field', 1, 1, 1, 0.029, 0.057],
    ['Carabus intricatus', 'oak wood', 0.75, 1, 0.75, 0.029, 0.057]
  ])
  const [scope] = comparedHabitats.scopes
  const results = withScope({indicators: {...scope!.indicators, withheld: true}})
  expect(headsOf('indicators-beetles', results)).not.toContain('p')
  expect(rowsOf('indicators-beetles', results)[0]).toEqual(['Poecilus cupreus', 'barley field', 1, 1, 1])
})

test('a species too sensitive for its site is in no list by habitat where a habitat has a single site', () => {
  const design = {...comparedHabitats.design, singleSiteHabitats: ['heath']}
  const [habitat] = comparedHabitats.sexesAndStages.sexes
  const results = {
    ...comparedHabitats,
    design,
    sexesAndStages: {...comparedHabitats.sexesAndStages, sexes: [{...habitat!, taxon: 'Carabus intricatus'}]}
  }
  for (const name of ['indicators-beetles', 'leading-indicators-beetles', 'sexes-by-habitat'])
    expect(JSON.stringify(tableOf(name, results))).not.toContain('Carabus intricatus')
  expect(rowsOf('sexes', results).map(([taxon]) => taxon)).toEqual(['Carabus intricatus'])
})

test('a chapter lists the ten largest indicator values, the season record all', () => {
  const [scope] = comparedHabitats.scopes
  const [one] = scope!.indicators.species
  const species = Array.from({length: 14}, (_, index) => ({...one!, taxon: `Species ${index + 1}`}))
  const results = withScope({indicators: {...scope!.indicators, species}})
  expect(rowsOf('leading-indicators-beetles', results).map(([taxon]) => taxon)).toEqual(
    species.slice(0, 10).map(({taxon}) => taxon)
  )
  expect(rowsOf('indicators-beetles', results)).toHaveLength(14)
})

test('rounds of a species are told as opened to collected, and never as a single day', () => {
  expect(rowsOf('species-season-beetles')).toEqual([
    [
      'Abax parallelepipedus',
      12,
      2,
      '28 May to 7 June 2026',
      'collected 17 June 2026',
      'collected 17 June 2026',
      17
    ]
  ])
})

test('make-up has a share for each habitat and a row for what is not known', () => {
  expect(rowsOf('make-up-beetles')).toEqual([
    ['guild', 'predator', 1, '0.4 to 1', countingErrorMethod, 0.5, '0.2 to 0.8', '', 7.5, 1],
    ['guild', 'seed eater', 0, '0 to 0.6', countingErrorMethod, 0.5, '0.2 to 0.8', '', 2.5, 2],
    ['guild', 'not known', '', '', '', '', '', '', 2, '']
  ])
  expect(tableOf('make-up-beetles', twoHabitats).empty).toBe('Neither guilds nor body lengths are on record.')
})

test('sexes stand with the share of females and its interval, stages with none where none was caught', () => {
  expect(rowsOf('sexes')).toEqual([['Abax parallelepipedus', 3, 2, 5, 0.6, '0.147 to 0.947', '']])
  expect(rowsOf('sexes-by-habitat')).toEqual([
    ['Abax parallelepipedus', 'oak wood', 3, 2, 5, 0.6, '0.147 to 0.947', '']
  ])
  expect(rowsOf('stages')).toEqual([['Lycosidae', 'juvenile', 1, 0, 3, 0.75, '0.2 to 0.97', '']])
})

test('rows set aside are told with the catch without and with them', () => {
  expect(rowsOf('set-aside')).toEqual([
    ['in use, as reported', '', '', 23, ''],
    ['set aside', 3, 2, 7, 7 / 30],
    ['both together', '', '', 30, '']
  ])
})

test('every estimator of the number of species says its form, its basis and whether it is a lower bound', () => {
  expect(rowsOf('estimators-beetles').slice(0, 2)).toEqual([
    ['oak wood', 'Chao1', 'S + ((n − 1)/n) f1²/(2 f2)', 'individuals', 'lower bound', 2, 0.5, '2 to 6'],
    ['oak wood', 'Jackknife 1', 'first order', 'sampling units (a site in a round)', 'estimate', 4.5, 1.2, '']
  ])
  const names = rowsOf('estimates-beetles').filter(([of]) => of === 'oak wood')
  expect(names.map(([, name]) => name)).toContain('species, Jackknife 1')
})

test('what another season would take stands habitat by habitat, and what is not defined says why', () => {
  const row = ['oak wood', 75, 2, 0.9, 120, 0.61, 'more units are needed', 5]
  expect(rowsOf('planning')).toEqual([
    ['all names', ...row],
    ['ground beetles, adults', ...row]
  ])
})

test('headline numbers stand without and with the rows set aside', () => {
  expect(rowsOf('set-aside-effect')).toEqual([['all names', 'oak wood', 12, 19, 9, 14, '', '', '', '']])
})
