import fc from 'fast-check'
import {expect, test} from 'vitest'
import {measureColumn} from '../../src/formats/column-widths.ts'
import {fitTable} from '../../src/formats/docx-table-fit.ts'
import type {Cell, ReportTable} from '../../src/report/table.ts'
import {measure} from '../report/small-results.ts'
import {all, attribute, bodyOf, type Node, settingOf, wordsIn} from './docx-parts.ts'

/** Text area of an A4 page with margins of 25 mm, upright and sideways, in twentieths of a point. */
const room = {upright: 9072, sideways: 14004}

const words = (text: string): Cell => ({type: 'text', text})
const count = (value: number): Cell => ({type: 'measure', measure: measure(value)})

function tableOf(columns: number, rows: number, more: Partial<ReportTable> = {}): ReportTable {
  return {
    name: 'grid',
    columns: [
      {head: 'Taxon', align: 'left', rowHead: true},
      ...Array.from({length: columns - 1}, (_, index) => ({
        head: `Site${index + 1}`,
        align: 'right' as const
      }))
    ],
    rows: Array.from({length: rows}, (_, row) => [
      words(`Name ${row + 1}`),
      ...Array.from({length: columns - 1}, (_, index) => count(1000 * row + index))
    ]),
    empty: 'Nothing.',
    ...more
  }
}

const shown = (table: ReportTable, text = ':::table{name=grid}\nThe catch.\n:::') =>
  bodyOf(`# T\n\nBefore.\n\n## Catch\n\n${text}\n\nAfter.`, {tables: new Map([['grid', table]])})

const widthOf = (table: Node) => Number(attribute(all(all(table, 'w:tblPr')[0]!, 'w:tblW')[0], 'w:w'))
const rowsOf = (table: Node) => all(table, 'w:tr').map((row) => all(row, 'w:tc').map(wordsIn))
const orientations = (body: Node) =>
  all(body, 'w:sectPr').map((section) => attribute(all(section, 'w:pgSz')[0], 'w:orient'))

test('the head of a table repeats on every page, and no row breaks', async () => {
  const [table] = all(await shown(tableOf(4, 60)), 'w:tbl')
  const rows = all(table!, 'w:tr')
  expect(rows).toHaveLength(61)
  expect(rows.map((row) => all(row, 'w:tblHeader').length)).toEqual([1, ...rows.slice(1).map(() => 0)])
  expect(rows.every((row) => all(row, 'w:cantSplit').length === 1)).toBe(true)
})

test('a caption stays with its table, and a short table on one page', async () => {
  const kept = (body: Node) => all(body, 'w:tr').map((row) => all(row, 'w:keepNext').length > 0)
  const short = await shown(tableOf(4, 5))
  const caption = all(short, 'w:p').find((paragraph) => settingOf(paragraph, 'w:pStyle') === 'Caption')!
  expect(all(caption, 'w:keepNext')).toHaveLength(1)
  expect(kept(short)).toEqual([true, true, true, true, true, false])
  expect(kept(await shown(tableOf(4, 60))).slice(0, 3)).toEqual([true, false, false])
})

test('decimal points stand below each other, by space after the numbers and none of it in the text', async () => {
  const rate = (value: number): Cell => ({type: 'measure', measure: measure(value, 'rate')})
  const table = tableOf(2, 0, {
    rows: [
      [words('a'), rate(123)],
      [words('b'), rate(1.25)],
      [words('c'), rate(12.5)]
    ]
  })
  const cells = all((await shown(table))!, 'w:tc').filter((_, index) => index % 2 === 1 && index > 1)
  expect(cells.map(wordsIn)).toEqual(['123', '1.25', '12.5'])
  const indents = cells.map((cell) => Number(attribute(all(cell, 'w:ind')[0], 'w:right') ?? 0))
  // Two digits and a point of Arial at 9 points are 0.5562, 0.5562 and 0.2778 of 180 twentieths.
  expect(indents).toEqual([250, 0, 100])
  expect(cells.map((cell) => settingOf(cell, 'w:jc'))).toEqual(['right', 'right', 'right'])
})

test('notes stand below the table with their marks, and a column head names its unit', async () => {
  const table = tableOf(2, 0, {
    columns: [
      {head: 'Taxon', align: 'left'},
      {head: 'Rate', unit: 'per 100 trap-nights', align: 'right'}
    ],
    rows: [
      [words('a'), {type: 'measure', measure: measure(5, 'rate', undefined, {caution: 'one site only'})}]
    ],
    foot: [[words('All'), count(5)]]
  })
  const body = await shown(table)
  expect(rowsOf(all(body, 'w:tbl')[0]!)).toEqual([
    ['Taxon', 'Rate per 100 trap-nights'],
    ['a', '5.00a'],
    ['All', '5']
  ])
  const notes = all(body, 'w:p').filter((paragraph) => settingOf(paragraph, 'w:pStyle') === 'TableNote')
  expect(notes.map(wordsIn)).toEqual(['a One site only.', ''])
  expect(all(body, 'w:vertAlign').map((node) => attribute(node, 'w:val'))).toEqual([
    'superscript',
    'superscript'
  ])
})

test('a table without rows says so', async () => {
  const body = await shown(tableOf(3, 0, {empty: 'Nothing was caught.'}))
  expect(all(body, 'w:tbl')).toEqual([])
  expect(wordsIn(body)).toBe('TBefore.CatchTable 1 The catch.Nothing was caught.After.')
})

test('of a table of thousands of rows the first ones are shown, and the file that has all is named', async () => {
  const body = await shown(tableOf(2, 2001))
  expect(all(body, 'w:tr')).toHaveLength(201)
  expect(wordsIn(body)).toContain('The first 200 of 2001 rows; all of them are in tables/grid.csv.')
})

test('a wide table stands on a page laid sideways, with its heading, and the text goes on upright', async () => {
  const body = await shown(tableOf(15, 12))
  expect(orientations(body)).toEqual(['portrait', 'landscape', 'portrait'])
  const [table] = all(body, 'w:tbl')
  expect(widthOf(table!)).toBeGreaterThan(room.upright)
  expect(widthOf(table!)).toBeLessThanOrEqual(room.sideways)
  const blocks = all(body, 'w:body')[0]!.elements!
  const ends = blocks.filter((block) => all(block, 'w:sectPr').length > 0).map(wordsIn)
  // The section before ends with the paragraph before the heading, not with one of its own that could fill a page.
  expect(ends).toEqual(['Before.', ''])
  expect(blocks.at(-1)?.name).toBe('w:sectPr')
})

test('a table too wide for any page is set in parts that each begin with the row heads', async () => {
  const body = await shown(tableOf(60, 20))
  const tables = all(body, 'w:tbl')
  expect(tables.length).toBeGreaterThan(1)
  const heads = tables.map((table) => rowsOf(table)[0]!)
  expect(heads.every(([first]) => first === 'Taxon')).toBe(true)
  expect(heads.flatMap(([, ...sites]) => sites)).toEqual(
    Array.from({length: 59}, (_, index) => `Site${index + 1}`)
  )
  expect(tables.every((table) => widthOf(table) <= room.sideways)).toBe(true)
  expect(wordsIn(body).match(/Table 1, continued/g)).toHaveLength(tables.length - 1)
})

test('a table that a text wrote out in Markdown keeps its head and its sides', async () => {
  const body = await shown(tableOf(2, 1), '| a | *b* |\n|:--|--:|\n| 1 | 2.5 |\n| 3 |')
  const [table] = all(body, 'w:tbl')
  expect(rowsOf(table!)).toEqual([
    ['a', 'b'],
    ['1', '2.5'],
    ['3', '']
  ])
  expect(all(table!, 'w:tblHeader')).toHaveLength(1)
})

test('whatever stands in a table, it is no wider than its page, and no column is left out', () => {
  const column = fc.record({
    align: fc.constantFrom('left' as const, 'right' as const),
    head: fc.string({maxLength: 30}),
    cells: fc.array(fc.oneof(fc.string({maxLength: 80}), fc.double().map(String)), {
      minLength: 5,
      maxLength: 5
    })
  })
  fc.assert(
    fc.property(
      fc.array(column, {minLength: 1, maxLength: 40}),
      fc.integer({min: 1, max: 3}),
      (columns, heads) => {
        const fit = fitTable(columns.map(measureColumn), Math.min(heads, columns.length), 70)
        for (const part of fit.parts) {
          const width = part.widths.reduce((sum, each) => sum + each, 0)
          expect(width).toBeLessThanOrEqual(fit.landscape ? room.sideways : room.upright)
          expect(part.widths).toHaveLength(part.columns.length)
        }
        expect(new Set(fit.parts.flatMap((part) => part.columns)).size).toBe(columns.length)
      }
    ),
    {numRuns: 200}
  )
})

test('no number is ever broken in a table that fits a page', () => {
  const columns = Array.from({length: 9}, () => ({
    align: 'right' as const,
    head: 'Activity-density',
    cells: ['1,234,567.89', '5']
  })).map(measureColumn)
  const {parts, size} = fitTable(columns, 1, 70)
  for (const {columns: shownColumns, widths} of parts)
    for (const [place, index] of shownColumns.entries())
      expect(widths[place]! - 140).toBeGreaterThanOrEqual(
        Math.max(...columns[index]!.cells) * size * 20 - 1e-6
      )
})
