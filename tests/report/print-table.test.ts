import {toString as wordsOf} from 'mdast-util-to-string'
import {expect, test} from 'vitest'
import {alignDecimals} from '../../src/formats/align-decimals.ts'
import {printTable} from '../../src/report/print-table.ts'
import type {Cell, TableColumn} from '../../src/report/table.ts'
import {measure, notDefined} from './small-results.ts'

function printed(column: TableColumn, ...cells: Cell[]): string[] {
  return printTable({name: 'x', columns: [column], rows: cells.map((cell) => [cell]), empty: ''}).rows.map(
    ([cell]) => wordsOf(cell?.children)
  )
}

const m = (value: number, kind: Parameters<typeof measure>[1], unit?: readonly [string, string]): Cell => ({
  type: 'measure',
  measure: measure(value, kind, unit)
})

test('numbers stand without their unit in a column of numbers, and with it among words', () => {
  const metres = ['m', 'm'] as const
  expect(printed({head: 'Height', align: 'right'}, m(120, 'metres', metres))).toEqual(['120'])
  expect(printed({head: 'What', align: 'left'}, m(120, 'metres', metres))).toEqual(['120 m'])
})

test('a share has its sign in the cell unless the head has it', () => {
  expect(printed({head: 'Share', align: 'right'}, m(0.12, 'share'))).toEqual(['12 %'])
  expect(printed({head: 'Share', unit: '%', align: 'right'}, m(0.12, 'share'))).toEqual(['12'])
})

test('every kind of cell has its words, and what is absent none', () => {
  const column = {head: 'x', align: 'left'} as const
  const interval = measure(5, 'rate', undefined, {interval: {low: 1, high: 9, confidence: 0.95, method: 'm'}})
  expect(
    printed(
      column,
      {type: 'interval', measure: interval},
      {type: 'interval', measure: notDefined('x')},
      {type: 'text', text: 'a\n b\u0000'},
      {type: 'date', day: '2026-06-04'},
      {type: 'place', place: 'catch.csv:3:1'},
      {type: 'taxon', taxon: 'Carabus', rank: 'genus', authority: 'L.'},
      {type: 'blank'}
    )
  ).toEqual(['1.00 to 9.00', '–', 'a b', '4 June 2026', 'catch.csv:3:1', 'Carabus L.', ''])
})

test('cautions and reasons become lettered notes, each said once', () => {
  const cells: Cell[] = [
    {type: 'measure', measure: notDefined('one site')},
    {type: 'measure', measure: measure(1, 'rate', undefined, {caution: 'few'})},
    {type: 'measure', measure: notDefined('one site')}
  ]
  const table = printTable({
    name: 'x',
    columns: [{head: 'x', align: 'right'}],
    rows: cells.map((cell) => [cell]),
    empty: ''
  })
  expect(table.rows.map(([cell]) => cell?.mark)).toEqual(['a', 'b', 'a'])
  expect(table.notes).toEqual([
    {mark: 'a', text: 'Not defined, because one site.'},
    {mark: 'b', text: 'Few.'}
  ])
})

test('words that every row shares are said once below the table, and others by a letter at the cell before', () => {
  const rate: Cell = {type: 'measure', measure: measure(1, 'rate')}
  const said = (...kinds: readonly string[]) =>
    printTable({
      name: 'x',
      columns: [
        {head: 'Rate', align: 'right'},
        {head: 'Kind', align: 'left', asNotes: true}
      ],
      rows: kinds.map((kind): Cell[] => [rate, kind === '' ? {type: 'blank'} : {type: 'text', text: kind}]),
      empty: ''
    })
  const alike = said('exact', 'exact')
  expect(alike.columns.map(({head}) => head)).toEqual(['Rate'])
  expect(alike.rows.map((cells) => cells.map(({mark}) => mark))).toEqual([[undefined], [undefined]])
  expect(alike.notes).toEqual([{text: 'Kind: exact.'}])
  const unlike = said('exact', '', 'ratio')
  expect(unlike.rows.map((cells) => cells.map(({mark}) => mark))).toEqual([['a'], [undefined], ['b']])
  expect(unlike.notes).toEqual([
    {mark: 'a', text: 'Kind: exact.'},
    {mark: 'b', text: 'Kind: ratio.'}
  ])
})

test('decimal points stand below each other', () => {
  expect(alignDecimals(['12.3', '4', '0.45', '–', 'words'])).toEqual([
    '\u2007',
    '\u2008\u2007\u2007',
    '',
    '\u2008\u2007\u2007',
    ''
  ])
})

test('what stands between backticks in our own words is code; a stray one is the study’s own', () => {
  const cells: Cell[] = [
    {type: 'text', text: 'nobody can add up `12*` or `c. 30`', marked: true},
    {type: 'text', text: 'the trap ` is unknown', marked: true},
    {type: 'text', text: 'a `b` of the study'}
  ]
  const columns = [{head: 'x', align: 'left'}] as const
  const {rows} = printTable({name: 'x', columns, rows: cells.map((cell) => [cell]), empty: ''})
  expect(rows.map(([cell]) => cell?.children.map(({type}) => type).join(' '))).toEqual([
    'text inlineCode text inlineCode',
    'text',
    'text'
  ])
  expect(rows.map(([cell]) => wordsOf(cell?.children))).toEqual([
    'nobody can add up 12* or c. 30',
    'the trap ` is unknown',
    'a `b` of the study'
  ])
})

test('words that all rows share are looked at a few times for each row, however many rows there are', () => {
  let looks = 0
  const alike: Cell = {
    type: 'text',
    get text() {
      looks += 1
      return 'It matters.'
    }
  }
  const count = 3000
  const table = printTable({
    name: 'x',
    columns: [
      {head: 'Place', align: 'left'},
      {head: 'Found', align: 'left'},
      {head: 'Why', align: 'left', asNotes: true}
    ],
    rows: Array.from({length: count}, () => [{type: 'blank'}, {type: 'text', text: 'a'}, alike]),
    empty: ''
  })
  expect(table.notes).toEqual([{text: 'Why: It matters.'}])
  expect(looks).toBeLessThan(5 * count)
})
