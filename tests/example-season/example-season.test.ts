import {readdirSync, readFileSync} from 'node:fs'
import {dirname, join, relative} from 'node:path'
import {fileURLToPath} from 'node:url'
import {load} from 'js-yaml'
import Papa from 'papaparse'
import {expect, test} from 'vitest'
import {toJSONSchema} from 'zod'
import type {TableName} from '../../src/model/column.ts'
import {tables} from '../../src/model/columns.ts'
import {settingsSchema} from '../../src/model/settings.ts'
import {greatCircleDistance} from '../../src/statistics/great-circle-distance.ts'
import {blemishesPage, cleanTwin, exampleStudy} from './make-example.ts'

const here = dirname(fileURLToPath(import.meta.url))
const folder = join(here, '../../example-study')
const example = exampleStudy()
const twin = cleanTwin()

type CsvRow = Readonly<Record<string, string>>

function rowsOf(files: ReadonlyMap<string, string>, table: TableName): readonly CsvRow[] {
  const text = files.get(`${table}.csv`) ?? ''
  return Papa.parse<CsvRow>(text, {header: true, delimiter: ',', newline: '\n', skipEmptyLines: true}).data
}

function column(rows: readonly CsvRow[], name: string): string[] {
  return rows.map((row) => row[name] ?? '')
}

const sum = (rows: readonly CsvRow[]) => rows.reduce((total, row) => total + Number(row.count), 0)
const collection = (row: CsvRow) => `${row.trap_id} ${row.collected}`

const siteHabitat = new Map(rowsOf(twin, 'sites').map((row) => [row.site_id, row.habitat ?? '']))
const trapSite = new Map(rowsOf(twin, 'traps').map((row) => [row.trap_id, row.site_id]))
const habitatOf = (row: CsvRow) => siteHabitat.get(trapSite.get(row.trap_id)) ?? ''

test('the committed example study is what the script makes, byte for byte, and holds no other file', () => {
  const committed = readdirSync(folder, {recursive: true, withFileTypes: true})
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .filter((path) => !path.startsWith('report/'))
  expect(committed.sort()).toEqual([...example.keys()].sort())
  for (const [path, text] of example)
    expect(readFileSync(join(folder, path)).equals(Buffer.from(text)), path).toBe(true)
  expect(readFileSync(join(here, 'blemishes.md'), 'utf8')).toBe(blemishesPage())
})

test('the season is drawn alike every time', () => {
  expect([...exampleStudy()]).toEqual([...example])
  expect([...cleanTwin()]).toEqual([...twin])
})

test.each([
  ['example', example],
  ['twin', twin]
] as const)('the %s has the places and rounds promised', (_, files) => {
  const sites = rowsOf(files, 'sites')
  expect(new Set(column(sites, 'habitat')).size).toBe(3)
  expect(sites).toHaveLength(12)
  expect(rowsOf(files, 'traps')).toHaveLength(72)
  expect(rowsOf(files, 'visits')).toHaveLength(576)
  expect(new Set(column(rowsOf(files, 'visits'), 'round')).size).toBe(8)
  const taxa = rowsOf(files, 'taxa').length
  expect(taxa).toBeGreaterThanOrEqual(45)
  expect(taxa).toBeLessThanOrEqual(60)
  const catchRows = rowsOf(files, 'catch').length
  expect(catchRows).toBeGreaterThanOrEqual(1500)
  expect(catchRows).toBeLessThanOrEqual(3000)
})

test.each([
  ['example', example],
  ['twin', twin]
] as const)('the %s uses the columns of the tables alone', (_, files) => {
  for (const {name, columns} of Object.values(tables)) {
    const headers = files.get(`${name}.csv`)?.split('\n')[0]?.split(',') ?? []
    expect(headers.filter((header) => !columns.some((one) => one.name === header))).toEqual([])
    expect(columns.filter((one) => one.required && !headers.includes(one.name))).toEqual([])
    for (const {name: header, words} of columns) {
      // A state of the study's own, with its credit in study.yaml.
      const known = header === 'condition' ? [...(words ?? []), 'trampled'] : words
      if (!known) continue
      const written = new Set(column(rowsOf(files, name), header).filter((word) => word !== ''))
      expect(
        [...written].filter((word) => !known.includes(word)),
        `${name}.${header}`
      ).toEqual([])
    }
  }
})

test('study.yaml holds to the settings and names the habitats, trap type, fluid and texts that are used', () => {
  const settings = settingsSchema.parse(load(example.get('study.yaml') ?? ''))
  expect(example.get('study.yaml')?.split('\n')[0]).toBe(
    '# yaml-language-server: $schema=../src/model/study.schema.json'
  )
  expect(Object.keys(settings.habitats ?? {}).sort()).toEqual([...new Set(siteHabitat.values())].sort())
  expect([...new Set(column(rowsOf(example, 'traps'), 'trap_type'))]).toEqual(
    Object.keys(settings.trap_types ?? {})
  )
  expect([...new Set(column(rowsOf(example, 'traps'), 'fluid'))]).toEqual(Object.keys(settings.fluids ?? {}))
  for (const path of Object.values(settings.report?.text ?? {})) expect(example.has(path), path).toBe(true)
})

test('study.yaml shows every setting, the seldom needed ones as comments', () => {
  const text = example.get('study.yaml') ?? ''
  const named = propertyNames(toJSONSchema(settingsSchema, {io: 'input'}))
  expect(named.size).toBeGreaterThan(80)
  // A key stands at the start of a line, after a dash, or after a brace of a short map.
  expect([...named].filter((key) => !new RegExp(`(^|[ {])${key}:`, 'm').test(text))).toEqual([])
})

/** Every property that a JSON Schema knows, at whatever depth. */
function propertyNames(schema: unknown): Set<string> {
  if (typeof schema !== 'object' || schema === null) return new Set()
  const own =
    'properties' in schema && typeof schema.properties === 'object'
      ? Object.keys(schema.properties ?? {})
      : []
  return new Set([...own, ...Object.values(schema).flatMap((part) => [...propertyNames(part)])])
}

test('what study.yaml shows as a comment is valid when the comment signs are taken away', () => {
  const text = example.get('study.yaml') ?? ''
  const tail = text.slice(text.indexOf('# files:')).replaceAll(/^# ?/gm, '')
  const settings = settingsSchema.parse(
    load(`${tail}rules: {some-rule: {severity: note, reason: because}}\n`)
  )
  expect(Object.keys(settings).sort()).toEqual(['columns', 'files', 'rules', 'words'])
})

test('sites lie 300 m to 4 km apart, and the nearest traps of a site exactly 30 m', () => {
  const positions = rowsOf(example, 'sites').map((row) => ({
    latitude: Number(row.latitude),
    longitude: Number(row.longitude)
  }))
  const distances = positions.flatMap((from, at) =>
    positions.slice(at + 1).map((to) => greatCircleDistance(from, to))
  )
  expect(Math.min(...distances)).toBeGreaterThan(300)
  expect(Math.max(...distances)).toBeLessThan(4000)
  const traps = rowsOf(example, 'traps')
  const steps = traps.slice(1).flatMap((trap, at) => {
    const before = traps[at]
    if (!before || before.site_id !== trap.site_id) return []
    return [Math.hypot(Number(trap.x_m) - Number(before.x_m), Number(trap.y_m) - Number(before.y_m))]
  })
  expect(new Set(steps)).toEqual(new Set([30]))
})

test('in the twin every catch row has its visit, its trap, its site and its taxon', () => {
  const visits = new Set(rowsOf(twin, 'visits').map(collection))
  const taxa = column(rowsOf(twin, 'taxa'), 'taxon')
  expect(rowsOf(twin, 'catch').filter((row) => !visits.has(collection(row)))).toEqual([])
  expect(rowsOf(twin, 'visits').filter((row) => !trapSite.has(row.trap_id))).toEqual([])
  expect([...trapSite.values()].filter((site) => !siteHabitat.has(site))).toEqual([])
  expect(new Set(column(rowsOf(twin, 'catch'), 'taxon'))).toEqual(new Set(taxa))
  expect(new Set(taxa).size).toBe(taxa.length)
})

test('in the twin every collection is sorted with catch rows or empty without, and several are empty', () => {
  const caught = new Set(rowsOf(twin, 'catch').map(collection))
  const visits = rowsOf(twin, 'visits')
  expect(visits.filter((row) => row.sample !== (caught.has(collection(row)) ? 'sorted' : 'empty'))).toEqual(
    []
  )
  const empty = visits.filter((row) => row.sample === 'empty').length
  expect(empty).toBeGreaterThanOrEqual(5)
  expect(empty).toBeLessThanOrEqual(40)
})

test('the twin has nothing but intact traps, adults named to species, whole counts and rows of their own key', () => {
  expect(new Set(column(rowsOf(twin, 'visits'), 'condition'))).toEqual(new Set(['intact']))
  expect(new Set(column(rowsOf(twin, 'visits'), 'vertebrates_count'))).toEqual(new Set(['0']))
  expect(new Set(column(rowsOf(twin, 'taxa'), 'rank'))).toEqual(new Set(['species']))
  const rows = rowsOf(twin, 'catch')
  expect(new Set(column(rows, 'life_stage'))).toEqual(new Set(['']))
  expect(column(rows, 'count').filter((count) => !/^[1-9]\d*$/.test(count))).toEqual([])
  expect(new Set(rows.map((row) => `${collection(row)} ${row.taxon} ${row.sex}`)).size).toBe(rows.length)
})

test('each round is opened when the one before was collected, fourteen nights after it was opened itself', () => {
  const nights = (from = '', to = '') => (Date.parse(to) - Date.parse(from)) / 86_400_000
  const visits = rowsOf(twin, 'visits')
  expect(new Set(visits.map((row) => nights(row.opened, row.collected)))).toEqual(new Set([14]))
  for (const trap of rowsOf(twin, 'traps')) {
    const own = visits.filter((row) => row.trap_id === trap.trap_id)
    expect(nights(trap.installed, own[0]?.opened)).toBe(7)
    expect(own.slice(1).map((row) => row.opened)).toEqual(own.slice(0, -1).map((row) => row.collected))
    expect(own.at(-1)?.collected).toBe(trap.removed)
  }
})

test('ground beetles come at 20 to 120 per 100 trap-nights in every habitat of the twin', () => {
  const family = new Map(rowsOf(twin, 'taxa').map((row) => [row.taxon, row.family]))
  for (const habitat of new Set(siteHabitat.values())) {
    const rows = rowsOf(twin, 'catch').filter(
      (row) => habitatOf(row) === habitat && family.get(row.taxon) === 'Carabidae'
    )
    const rate = (100 * sum(rows)) / (24 * 8 * 14)
    expect(rate, habitat).toBeGreaterThan(20)
    expect(rate, habitat).toBeLessThan(120)
  }
})

test('several kinds are singletons, a few doubletons, and each habitat has kinds of its own', () => {
  const totals = new Map<string, number>()
  const homes = new Map<string, Set<string>>()
  for (const row of rowsOf(twin, 'catch')) {
    const taxon = row.taxon ?? ''
    totals.set(taxon, (totals.get(taxon) ?? 0) + Number(row.count))
    homes.set(taxon, (homes.get(taxon) ?? new Set()).add(habitatOf(row)))
  }
  const caught = (count: number) => [...totals.values()].filter((total) => total === count).length
  expect(caught(1)).toBeGreaterThanOrEqual(7)
  expect(caught(2)).toBeGreaterThanOrEqual(2)
  for (const habitat of new Set(siteHabitat.values())) {
    const own = [...homes].filter(
      ([taxon, where]) => where.size === 1 && where.has(habitat) && (totals.get(taxon) ?? 0) > 2
    )
    expect(own.length, habitat).toBeGreaterThanOrEqual(3)
  }
})

test('the example has its four slips of the keyboard and no more', () => {
  const visits = new Set(rowsOf(example, 'visits').map(collection))
  const taxa = new Set(column(rowsOf(example, 'taxa'), 'taxon'))
  const rows = rowsOf(example, 'catch')
  expect(rows.filter((row) => !taxa.has(row.taxon ?? '')).map((row) => row.taxon)).toEqual([
    'Pterostichus melanraius'
  ])
  expect(rows.filter((row) => !visits.has(collection(row))).map((row) => row.trap_id)).toEqual(['OAK2-33'])
  expect(column(rows, 'count').filter((count) => !/^[1-9]\d*$/.test(count))).toEqual(['12*'])
  expect(rows.length - new Set(rows.map((row) => JSON.stringify(row))).size).toBe(1)
})

test('in the example every visit without catch rows says what became of it, and none with catch rows says empty or lost', () => {
  const caught = new Set(rowsOf(example, 'catch').map(collection))
  const visits = rowsOf(example, 'visits')
  expect(visits.filter((row) => row.sample === 'sorted' && !caught.has(collection(row)))).toEqual([])
  expect(visits.filter((row) => row.sample !== 'sorted' && caught.has(collection(row)))).toEqual([])
  const counted = (word: string) => visits.filter((row) => row.sample === word).length
  expect([counted('lost'), counted('unsorted')]).toEqual([3, 1])
})

test('the example has one sensitive taxon, caught at one site, and one kind with a red-list word', () => {
  const taxa = rowsOf(example, 'taxa')
  const sensitive = taxa.filter((row) => row.sensitive !== '')
  expect(sensitive.map((row) => row.sensitive)).toEqual(['2'])
  const found = rowsOf(example, 'catch').filter((row) => row.taxon === sensitive[0]?.taxon)
  expect([...new Set(found.map((row) => trapSite.get(row.trap_id)))]).toEqual(['OAK3'])
  expect(taxa.filter((row) => row.red_list !== '')).toHaveLength(1)
  expect(taxa.filter((row) => row.note !== '').length).toBeGreaterThanOrEqual(8)
  expect(rowsOf(example, 'sites').filter((row) => row.coordinates_shown === 'none')).toHaveLength(1)
})
