import fc from 'fast-check'
import iconv from 'iconv-lite'
import Papa from 'papaparse'
import {expect, test} from 'vitest'
import {isoDay} from '../../src/model/day.ts'
import {parseStudy} from '../../src/parse/parse-study.ts'
import {memorySource} from '../memory-source.ts'

/** How a spreadsheet somewhere may write a table. */
const dialect = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t'),
  newline: fc.constantFrom('\n', '\r\n', '\r'),
  encoding: fc.constantFrom('utf8', 'utf8-bom', 'utf16le', 'utf16be', 'win1252'),
  quotes: fc.boolean(),
  padding: fc.constantFrom('', ' ', '\u00a0'),
  trailingColumns: fc.nat({max: 2}),
  trailingRows: fc.nat({max: 3}),
  decimalComma: fc.boolean(),
  dates: fc.constantFrom('iso', 'dmy', 'mdy'),
  title: fc.boolean(),
  headers: fc.constantFrom(
    (name: string) => name,
    (name: string) => name.toUpperCase(),
    (name: string) => name.replaceAll('_', ' ')
  )
})
type Dialect = typeof dialect extends fc.Arbitrary<infer Value> ? Value : never

/** Words that every encoding above can write, some of them hard on a CSV reader. */
const words = fc.constantFrom(
  'plain',
  'with, comma',
  'semi; colon',
  'a "quoted" word',
  'two\nlines',
  'é ü ñ',
  'tab\there',
  "it's",
  '5" pipe'
)

const row = fc.record({
  trap: fc.constantFrom('A-1', 'A-2', 'B-1'),
  day: fc.integer({min: 20_000, max: 21_000}),
  taxon: fc.constantFrom('Carabus problematicus', 'Abax parallelepipedus', 'Pardosa lugubris'),
  count: fc.nat({max: 500}),
  fraction: fc.constantFrom(undefined, 0.5, 0.25, 0.125),
  remarks: fc.option(words, {nil: undefined})
})

function written(header: readonly string[], rows: readonly (readonly string[])[], how: Dialect): Uint8Array {
  const wide = [...header.map(how.headers), ...Array<string>(how.trailingColumns).fill('')]
  const cells = rows.map((cellsOfRow) => [
    ...cellsOfRow.map((cell) =>
      cell === '' || cell.includes('\n') ? cell : `${how.padding}${cell}${how.padding}`
    ),
    ...Array<string>(how.trailingColumns).fill('')
  ])
  const blank = Array.from({length: how.trailingRows}, () => wide.map(() => ''))
  const table = [wide, ...cells, ...blank]
  // The line break inside a cell is the file's own, as spreadsheets write it.
  const text = Papa.unparse(table, {
    delimiter: how.delimiter,
    newline: how.newline,
    quotes: how.quotes
  }).replaceAll(/(?<!\r)\n/g, how.newline)
  const titled = how.title ? `Table of the season${how.newline}${text}` : text
  if (how.encoding === 'utf8-bom') return iconv.encode(titled, 'utf8', {addBOM: true})
  if (how.encoding === 'utf16le' || how.encoding === 'utf16be')
    return iconv.encode(titled, how.encoding, {addBOM: true})
  return iconv.encode(titled, how.encoding)
}

function date(day: number, how: Dialect): string {
  const [year = '', month = '', dayOfMonth = ''] = isoDay(day).split('-')
  if (how.dates === 'iso') return isoDay(day)
  return how.dates === 'dmy'
    ? `${dayOfMonth}/${month}/${year}`
    : `${Number(month)}/${Number(dayOfMonth)}/${year.slice(2)}`
}

test('catch rows written in any dialect read back as they were', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(row, {maxLength: 30}), dialect, async (rows, how) => {
      const number = (value: number | undefined): string =>
        value === undefined ? '' : how.decimalComma ? String(value).replace('.', ',') : String(value)
      const header = ['trap_id', 'collected', 'taxon', 'count', 'sample_fraction', 'remarks']
      const cells = rows.map(({trap, day, taxon, count, fraction, remarks}) => [
        trap,
        date(day, how),
        taxon,
        String(count),
        number(fraction),
        remarks ?? ''
      ])
      const outcome = await parseStudy(
        memorySource({
          'study.yaml': `title: T\n${how.dates === 'iso' ? '' : `dates: ${how.dates}\n`}`,
          'sites.csv': 'site_id,habitat\n',
          'traps.csv': 'trap_id,site_id\n',
          'visits.csv': 'trap_id,opened,collected\n',
          'catch.csv': written(header, cells, how)
        })
      )
      if ('unreadable' in outcome) throw new Error(JSON.stringify(outcome.unreadable))
      const {study} = outcome
      expect(study.problems.filter(({setsAside}) => setsAside)).toEqual([])
      expect(study.tables.catch?.rowsRead).toBe(rows.length)
      expect(
        study.catch.map(({trapId, collected, taxon, count, sampleFraction, remarks}) => ({
          trap: trapId,
          day: collected?.day,
          taxon,
          count,
          fraction: sampleFraction,
          remarks
        }))
      ).toEqual(rows.map((expected) => ({...expected, fraction: expected.fraction ?? 1})))
    }),
    {numRuns: 400}
  )
})
