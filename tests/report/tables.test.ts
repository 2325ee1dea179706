import {expect, test} from 'vitest'
import type {Finding} from '../../src/model/finding.ts'
import {isDefined} from '../../src/model/quantity.ts'
import type {Results} from '../../src/model/results.ts'
import type {Cell, ReportTable} from '../../src/report/table.ts'
import {tableDefinitions} from '../../src/report/tables/index.ts'
import {twoHabitats} from './two-habitats.ts'

const finding: Finding = {
  code: 'unknown-trap',
  severity: 'error',
  place: {file: 'catch.csv', line: 7, column: 1},
  message: 'no trap is called w9',
  why: 'its catch belongs nowhere',
  remedy: 'write the trap as traps.csv does'
}

function allTables(
  results: Results = twoHabitats,
  findings: readonly Finding[] = [finding]
): ReadonlyMap<string, ReportTable> {
  const tables = tableDefinitions.flatMap((definition) => definition.tables({results, findings}))
  return new Map(tables.map((table) => [table.name, table]))
}

function tableOf(name: string, results?: Results, findings?: readonly Finding[]): ReportTable {
  const table = allTables(results, findings).get(name)
  if (table === undefined) throw new Error(`there is no table ${name}`)
  return table
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
    case 'date':
      return cell.day
    case 'place':
      return cell.place
    case 'taxon':
      return [cell.taxon, cell.authority].filter(Boolean).join(' ')
    default:
      return ''
  }
}

function rowsOf(name: string, results?: Results): (string | number)[][] {
  return tableOf(name, results).rows.map((row) => row.map(said))
}

function footOf(name: string, results?: Results): (string | number)[] {
  return (tableOf(name, results).foot?.[0] ?? []).map(said)
}

/** The numbers below one head, of rows or of the foot. */
function below(name: string, head: string, part: 'rows' | 'foot' = 'rows'): number[] {
  const table = tableOf(name)
  const index = table.columns.findIndex((column) => column.head === head)
  return (table[part] ?? []).map((row) => said(row[index])).filter((value) => typeof value === 'number')
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

function withNothingCaught(): Results {
  return {...twoHabitats, taxa: [], vertebrates: {...twoHabitats.vertebrates, recorded: false, events: []}}
}

test('every table has a name of its own', () => {
  const names = tableDefinitions
    .flatMap((definition) => definition.tables({results: twoHabitats, findings: []}))
    .map(({name}) => name)
  expect(names).toEqual([...new Set(names)])
  expect(names.length).toBeGreaterThanOrEqual(tableDefinitions.length)
})

test('a table is named as its definition, with the scope or site after it where there are several', () => {
  for (const {name, tables} of tableDefinitions) {
    const ids = [...twoHabitats.scopes, ...twoHabitats.sites].map(({id}) => `${name}-${id}`)
    for (const table of tables({results: twoHabitats, findings: []}))
      expect([name, ...ids]).toContain(table.name)
  }
})

test.each([...allTables()])('%s has a cell for each column in every row and in its foot', (_name, table) => {
  const widths = [...table.rows, ...(table.foot ?? [])].map((row) => row.length)
  expect(new Set([...widths, table.columns.length])).toEqual(new Set([table.columns.length]))
})

test.each([...allTables()])('%s says something where it has no rows', (_name, table) => {
  expect(table.empty).toMatch(/^[A-Z].*\.$/)
})

test.each(['effort-by-habitat', 'effort-by-site', 'effort-by-round', 'effort-by-trap'])(
  'the rows of %s add up to the effort of the study',
  (name) => {
    for (const head of ['Exposures', 'Planned', 'Achieved', 'Not sorted yet', 'Lost']) {
      expect(sum(below(name, head))).toBeCloseTo(sum(below(name, head, 'foot')), 9)
    }
  }
)

test('the effort of a habitat is listed as planned, exposed, achieved, not sorted yet and lost', () => {
  expect(rowsOf('effort-by-habitat')).toEqual([
    ['oak wood', 2, 4, 8, 80, 80, 75, 0, 5, 0.0625],
    ['barley field', 1, 2, 4, 40, 40, 30, 10, 0, 0]
  ])
  expect(footOf('effort-by-habitat').slice(0, 5)).toEqual(['All habitats', 3, 6, 12, 120])
})

test('a round without an opening date has an empty cell for it', () => {
  expect(rowsOf('effort-by-round').map((row) => row.slice(0, 3))).toEqual([
    ['R1', '2026-05-28', '2026-06-07'],
    ['R2', '', '2026-06-17']
  ])
})

test('conditions tell meaning and credit and add up to all exposures', () => {
  expect(rowsOf('conditions')).toEqual([
    ['intact', '', 'all nights', 11, 110, 100],
    ['trampled', 'dented by deer', 'half the nights', 1, 10, 5]
  ])
  expect(footOf('conditions')).toEqual(['All exposures', '', '', 12, 120, 105])
})

test('the rates of a habitat stand with their interval and with what that interval is', () => {
  const [wood = [], field = []] = rowsOf('rates-by-habitat')
  expect(wood.slice(0, 5)).toEqual(['oak wood', 2, 75, 13, 3])
  expect(wood[5]).toBeCloseTo(17.33, 2)
  expect(wood[7]).toBe('between sampling units')
  expect(field[7]).toBe('counting error only, not a range for the habitat')
  expect(tableOf('rates-by-habitat').columns[6]).toEqual({head: 'Interval', unit: '95 %', align: 'right'})
})

test('the rate by rim has a column only where trap types differ', () => {
  const heads = (results?: Results) => tableOf('rates-by-habitat', results).columns.map(({head}) => head)
  const [wood, field] = twoHabitats.habitats
  const rimmed = {...wood!, catch: {...wood!.catch, rimRate: wood!.catch.rate}}
  expect(heads()).not.toContain('Activity-density by rim')
  expect(heads({...twoHabitats, habitats: [rimmed, field!]})).toContain('Activity-density by rim')
})

test('the catch of sites and of habitats adds up to the catch of the study', () => {
  for (const name of ['rates-by-site', 'rates-by-habitat', 'seasons']) {
    expect(sum(below(name, 'Caught'))).toBe(23)
    expect(below(name, 'Caught', 'foot')).toEqual([23])
  }
})

test('every taxon is listed with family, authority, share, sites, sexes and immatures', () => {
  expect(rowsOf('taxa-by-habitat')[0]).toEqual([
    'Abax parallelepipedus (Piller & Mitterpacher, 1783)',
    'Carabidae',
    10,
    0,
    0,
    10,
    10 / 23,
    2,
    3,
    2,
    0
  ])
  expect(rowsOf('taxa-by-habitat')[3]).toEqual(['Lycosidae', 'Lycosidae', 1, 2, 0, 3, 3 / 23, 2, 0, 0, 3])
})

test('the totals of the taxa are the catch, inside and outside the effort', () => {
  expect(sum(below('taxa-by-habitat', 'Total'))).toBe(24)
  expect(sum(below('taxa-by-habitat', 'Outside the effort'))).toBe(1)
  expect(footOf('taxa-by-habitat').slice(0, 6)).toEqual(['All taxa', '', 13, 10, 1, 24])
})

test('catch outside the effort has no column where there is none', () => {
  const none = {...twoHabitats.catch, outsideEffort: {...twoHabitats.catch.outsideEffort, value: 0}}
  expect(
    tableOf('taxa-by-habitat', {...twoHabitats, catch: none}).columns.map(({head}) => head)
  ).not.toContain('Outside the effort')
})

test('family and sexes have columns only where some taxon has them on record', () => {
  const bare = twoHabitats.taxa.map(({family: _, females, males, ...taxon}) => ({
    ...taxon,
    females: {...females, value: 0},
    males: {...males, value: 0}
  }))
  const table = tableOf('taxa-by-habitat', {...twoHabitats, taxa: bare})
  expect(table.columns.map(({head}) => head)).not.toContain('Family')
  expect(table.columns.map(({head}) => head)).not.toContain('Females')
  expect(table.rows.map((row) => row.length)).toEqual(bare.map(() => table.columns.length))
  expect(table.foot?.[0]?.length).toBe(table.columns.length)
})

test('a taxon too sensitive to be tied to a site is tied to none, nor to a habitat of one site', () => {
  const row = (name: string) => rowsOf(name).find(([taxon]) => `${taxon}`.startsWith('Carabus intricatus'))
  expect(row('taxa-by-site')).toEqual(['Carabus intricatus', 'withheld', 'withheld', 'withheld', 2])
  expect(row('taxa-by-habitat')?.slice(2, 6)).toEqual(['withheld', 'withheld', 0, 2])
  expect(row('taxon-rates')?.slice(1, 3)).toEqual(['withheld', 'withheld'])
})

test('a sensitive taxon is tied to habitats where each of them has several sites', () => {
  const results = {...twoHabitats, design: {...twoHabitats.design, singleSiteHabitats: []}}
  const row = rowsOf('taxa-by-habitat', results).find(([taxon]) =>
    `${taxon}`.startsWith('Carabus intricatus')
  )
  expect(row?.slice(2, 4)).toEqual([2, 0])
})

test('taxa by site count none where none was caught, and foot up to the catch of each site', () => {
  expect(rowsOf('taxa-by-site')[2]).toEqual(['Poecilus cupreus', 0, 0, 9, 9])
  expect(footOf('taxa-by-site')).toEqual(['All taxa', 7, 6, 11, 24])
})

test('catch outside the effort lists only the taxa that have any', () => {
  expect(rowsOf('outside-effort')).toEqual([['Poecilus cupreus', 0, 1, 1]])
  expect(footOf('outside-effort')).toEqual(['All taxa', 0, 1, 1])
})

test('immatures and listed taxa stand apart', () => {
  expect(rowsOf('immatures')).toEqual([['Lycosidae', 'Lycosidae', 3, 3]])
  expect(rowsOf('listed-taxa').map((row) => row.slice(1))).toEqual([
    ['near threatened', '', 10, 2],
    ['', 'protected', 2, 1]
  ])
})

test('diversity lists every habitat and then the whole study', () => {
  expect(rowsOf('diversity-beetles').map((row) => row.slice(0, 8))).toEqual([
    ['oak wood', 1, 75, 12, 2, 0, 1, 0.9],
    ['barley field', 1, 30, 8, 1, 0, 0, 0.9],
    ['whole study', 1, 105, 20, 3, 0, 1, 0.9]
  ])
  expect(rowsOf('diversity-beetles')[0]?.slice(8)).toEqual([2, '2 to 6'])
  expect(rowsOf('hill-numbers-beetles').map(([label]) => label)).toEqual([
    'oak wood',
    'barley field',
    'whole study'
  ])
  expect(rowsOf('hill-numbers-beetles')[0]?.slice(1)).toEqual([
    12,
    1.5,
    'the sample is too small for asymptotic diversity',
    '',
    1.4,
    'the sample is too small for asymptotic diversity',
    ''
  ])
})

test('a study of one habitat does not list the whole study again', () => {
  const [scope] = twoHabitats.scopes
  const results = {...twoHabitats, scopes: [{...scope!, habitats: scope!.habitats.slice(0, 1)}]}
  expect(rowsOf('indices-beetles', results).map(([label]) => label)).toEqual(['oak wood'])
})

test('Chao1 is called a lower bound wherever it is listed', () => {
  const chao = rowsOf('estimates-beetles').filter(([, name]) => `${name}`.includes('Chao1'))
  expect(chao.length).toBe(6)
  expect(new Set(chao.map(([, , , kind]) => kind))).toEqual(new Set(['lower bound']))
  expect(tableOf('diversity-beetles').columns.find(({head}) => head === 'Chao1')?.unit).toContain(
    'lower bound'
  )
})

test('names left out of diversity are listed with the reason and footed by their animals', () => {
  expect(rowsOf('left-out-beetles')).toEqual([['Lycosidae', 'it names only a family', 3]])
  expect(footOf('left-out-beetles')).toEqual(['All names left out', '', 3])
})

test('rows read are rows used and rows set aside, and each row set aside has its rule', () => {
  for (const [, , , read, used, setAside] of rowsOf('row-balance'))
    expect(read).toBe(Number(used) + Number(setAside))
  expect(sum(below('row-balance', 'Set aside'))).toBe(2)
  expect(rowsOf('rows-set-aside')).toEqual([
    ['visits', 'duplicate-visit', 'its effort would count twice', 1],
    ['catch', 'unknown-trap', 'its catch belongs nowhere', 1]
  ])
  expect(below('rows-set-aside', 'Set aside', 'foot')).toEqual([2])
})

test('findings by rule add up to all findings', () => {
  expect(sum(below('findings-by-rule', 'Findings'))).toBe(3)
  expect(below('findings-by-rule', 'Findings', 'foot')).toEqual([3])
})

test('a finding is listed with its place, message and remedy', () => {
  expect(rowsOf('findings')).toEqual([
    [
      'catch.csv:7:1',
      'error',
      'unknown-trap',
      'no trap is called w9',
      'its catch belongs nowhere',
      'write the trap as traps.csv does'
    ]
  ])
})

test('what is not known of a vertebrate is said to be not recorded', () => {
  expect(rowsOf('vertebrates')).toEqual([
    ['Badger Holt', 'w2-1', '2026-06-07', 'bank vole', 'not recorded', 1]
  ])
  expect(tableOf('vertebrates', withNothingCaught()).empty).toBe(
    'It was not recorded whether vertebrates were caught.'
  )
})

test('a site shows its position as far as others may see it, and nothing else that gives its place away', () => {
  expect(rowsOf('sites').map((row) => row.slice(2, 4))).toEqual([
    ['55.40, 3.20', 'rounded to 0.01 degrees'],
    ['', 'withheld'],
    ['', 'withheld']
  ])
  const everything = JSON.stringify([...allTables()])
  expect(everything).not.toContain('Hidden Hollow')
  expect(everything).not.toContain('Upper Fold Farm')
})

test('habitat structure has a column with its unit, empty where it was not recorded', () => {
  expect(tableOf('sites').columns.at(-1)).toEqual({head: 'Depth of the litter', unit: 'mm', align: 'right'})
  expect(rowsOf('sites').map((row) => row.at(-1))).toEqual([8, '', 8])
})

test('a trap type tells yes, no or not recorded, and a property that no type states has no row', () => {
  expect(tableOf('traps-in-use').columns.map(({head}) => head)).toEqual(['Trap type', 'cup', 'jar'])
  expect(rowsOf('traps-in-use')).toEqual([
    ['Traps', 4, 2],
    ['Container', 'plastic cup', 'glass jar'],
    ['Rim diameter (mm)', '80', 'not recorded'],
    ['Funnel', 'no', 'not recorded'],
    ['Cover', 'yes', 'plywood']
  ])
  expect(rowsOf('fluids-in-use').map(([property, pg]) => [property, pg])).toEqual([
    ['Traps', 6],
    ['Substance', 'propylene glycol'],
    ['Dilution', '1:2'],
    ['Bait', 'no']
  ])
})

test('the list of a site names what it may, most numerous first, and foots up to all animals caught there', () => {
  expect(rowsOf('site-taxa-w1')).toEqual([
    ['Abax parallelepipedus', 'parallel-sided ground beetle', 'Carabidae', 6],
    ['Lycosidae', '', 'Lycosidae', 1]
  ])
  expect(footOf('site-taxa-w1')).toEqual(['All animals caught', '', '', 7])
  expect(rowsOf('site-taxa-w2')).toEqual([
    ['Abax parallelepipedus', 'parallel-sided ground beetle', 'Carabidae', 4]
  ])
  expect(tableOf('site-taxa-f1').columns.map(({head}) => head)).not.toContain('Everyday name')
})

test('a short list of a site leaves out its total where it leaves out kinds', () => {
  const [site] = twoHabitats.sites
  const many = Array.from({length: 12}, (_, index) => ({...site!.taxa[0]!, taxon: `Kind ${index}`}))
  const results = {...twoHabitats, sites: [{...site!, taxa: many}]}
  expect(rowsOf('site-common-taxa-w1', results).length).toBe(5)
  expect(tableOf('site-common-taxa-w1', results).foot).toBeUndefined()
  expect(rowsOf('site-taxa-w1', results).length).toBe(12)
})

test('sensitivity puts the rules of each habitat side by side', () => {
  expect(rowsOf('sensitivity').map((row) => row.slice(0, 4))).toEqual([
    ['oak wood', 'credits of this study', 75, 13],
    ['oak wood', 'full credit', 80, 13],
    ['barley field', 'credits of this study', 30, 10],
    ['barley field', 'full credit', 30, 10]
  ])
})

test('the checklist keeps the status of each item', () => {
  expect(rowsOf('checklist').map(([, status]) => status)).toEqual(['reported', 'not recorded'])
})

test('the data dictionary explains every column of every table of records', () => {
  const rows = rowsOf('data-dictionary')
  expect(rows).toContainEqual(['trap_id', 'visits', 'short name', '', 'yes', 'trap'])
  expect(rows.find(([column]) => column === 'rim')?.at(-1)).toBe(
    'how the rim stood to the soil (flush, sunken, proud)'
  )
})

test('a study that caught nothing has empty tables and no made-up rows', () => {
  for (const name of [
    'taxa-by-habitat',
    'taxa-by-site',
    'taxon-rates',
    'outside-effort',
    'immatures',
    'listed-taxa',
    'vertebrates'
  ]) {
    expect(rowsOf(name, withNothingCaught())).toEqual([])
  }
})
