import fc from 'fast-check'
import Papa from 'papaparse'
import {expect, test} from 'vitest'
import {ColumnProfiler} from '../../src/archive/data-package/column-profile.ts'
import {profilePlainText, TableProfiler} from '../../src/archive/data-package/table-profile.ts'

const wanted = new Set([0, 1, 2, 3])

async function* inChunks(text: string, size: number): AsyncIterable<string> {
  for (let start = 0; start < text.length; start += size) yield text.slice(start, start + size)
}

test('a table read line by line has the same profile as one read by records, however it is cut', async () => {
  const cell = fc.constantFrom(
    '',
    '1',
    '12',
    '-3',
    '0.5',
    '0,5',
    '007',
    '2026-05-04',
    '2026-02-30',
    '2026-05-04T10:00:00',
    'x',
    'xy',
    ' ',
    '#',
    'Größe'
  )
  const row = fc.array(cell, {minLength: 1, maxLength: 5})
  await fc.assert(
    fc.asyncProperty(
      fc.array(row, {maxLength: 30}),
      fc.integer({min: 1, max: 40}),
      fc.constantFrom(',', ';'),
      async (rows, size, delimiter) => {
        fc.pre(delimiter === ';' || !rows.flat().includes('0,5'))
        const text = `title\na${delimiter}b${delimiter}c${delimiter}d\n${rows.map((cells) => `${cells.join(delimiter)}\n`).join('')}`
        const isHeader = (cells: readonly string[]) => cells[0] === 'a'
        const [plain, records] = [new TableProfiler(isHeader, wanted), new TableProfiler(isHeader, wanted)]
        expect(await profilePlainText(inChunks(text, size), delimiter, plain)).toBe(true)
        for (const cells of Papa.parse<string[]>(text, {delimiter, newline: '\n'}).data) records.add(cells)
        expect(plain.profile()).toEqual(records.profile())
      }
    ),
    {numRuns: 400}
  )
})

test('a quotation mark sends the reader back to records', async () => {
  const profiler = new TableProfiler(() => true, wanted)
  expect(await profilePlainText(inChunks('a,b\n"1",2\n', 3), ',', profiler)).toBe(false)
})

test('a column is what all of its cells are', () => {
  const profileOf = (...cells: readonly string[]) => {
    const profiler = new ColumnProfiler(true)
    for (const each of cells) profiler.add(each)
    return profiler.profile()
  }
  expect(profileOf('1', '12', '-3', '')).toMatchObject({
    isInteger: true,
    isPointNumber: true,
    empty: 1,
    least: -3,
    greatest: 12,
    isUnique: true
  })
  expect(profileOf('1', '1')).toMatchObject({isUnique: false})
  expect(profileOf('007')).toMatchObject({isInteger: false})
  expect(profileOf('1.5', '2')).toMatchObject({isInteger: false, isPointNumber: true, isCommaNumber: false})
  expect(profileOf('1,5', '2')).toMatchObject({isPointNumber: false, isCommaNumber: true})
  expect(profileOf('2026-02-28', '2024-02-29')).toMatchObject({isDay: true})
  expect(profileOf('2026-02-29')).toMatchObject({isDay: false})
  expect(profileOf(' 1')).toMatchObject({isInteger: false})
  expect(profileOf('')).toMatchObject({isInteger: false, isDay: false, isUnique: true})
})
