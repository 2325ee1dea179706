import fc from 'fast-check'
import Papa from 'papaparse'
import {expect, test} from 'vitest'
import {csv} from '../../src/formats/csv.ts'
import {bibtex, figureCsv, json, tableCsv} from '../../src/formats/index.ts'
import {figures, references, tables} from '../report/compose.ts'
import {measure} from '../report/small-results.ts'

test('a table is written with raw numbers, authorities, and what must be said of a number', () => {
  expect(tableCsv(tables.get('rates')!)).toBe(
    'Taxon,Taxon authority,Rate (per 100 trap-nights),Rate note\n' +
      '"Carabus nemoralis","Müller, 1764",53.333,One site only.\n'.replaceAll(
        '"Carabus nemoralis"',
        'Carabus nemoralis'
      ) +
      '\'=1+1 | *x* <script>,,,"Not defined, because no traps stood there."\n'
  )
})

test('an interval is two columns, once, and a share is a fraction of 1', () => {
  const rate = measure(0.12, 'share', undefined, {
    interval: {low: 0.05, high: 0.2, confidence: 0.95, method: 'exact'}
  })
  const columns = [
    {head: 'Share', unit: '%', align: 'right'},
    {head: 'Interval', unit: '%', align: 'right'}
  ] as const
  const cell = {type: 'measure', measure: rate} as const
  expect(tableCsv({name: 'a', columns, rows: [[cell, {type: 'interval', measure: rate}]], empty: ''})).toBe(
    'Share (fraction),Interval low,Interval high\n0.12,0.05,0.2\n'
  )
  expect(tableCsv({name: 'a', columns: [columns[0]], rows: [[cell]], empty: ''})).toBe(
    'Share (fraction),Share low,Share high\n0.12,0.05,0.2\n'
  )
})

test.each([
  ['=HYPERLINK("x")', '\'=HYPERLINK("x")'],
  ['+44 20', "'+44 20"],
  ['@sum', "'@sum"],
  ['-1+1', "'-1+1"],
  ['＝1+1', "'＝1+1"],
  ['-3', '-3'],
  ['-3.5', '-3.5'],
  ['-', '-'],
  ['plain', 'plain']
])('%s is written %s, so that no spreadsheet calculates it', (text, written) => {
  expect(Papa.parse<string[]>(csv(['a'], [[text]])).data[1]).toEqual([written])
})

test('numbers keep their sign and all their digits', () => {
  expect(
    csv(
      ['a', 'b'],
      [
        [-3, 0.1 + 0.2],
        [null, 1e21]
      ]
    )
  ).toBe('a,b\n-3,0.30000000000000004\n,1e+21\n')
  expect(() => csv(['a'], [[Number.NaN]])).toThrow(RangeError)
})

test('any text reads back from CSV, but for what was made harmless', () => {
  fc.assert(
    fc.property(
      fc.array(fc.string({unit: fc.constantFrom(...'ab,"\n \'1é')}), {minLength: 1, maxLength: 4}),
      (cells) => {
        const [, row] = Papa.parse<string[]>(
          csv(
            cells.map((_, index) => `c${index}`),
            [cells]
          ),
          {newline: '\n'}
        ).data
        expect(row).toEqual(cells.map((cell) => (/^\n./s.test(cell) ? `'${cell}` : cell)))
      }
    )
  )
})

test('no two columns have the same head', () => {
  expect(csv(['a', 'a', 'a'], [])).toBe('a,a (2),a (3)\n')
})

test('the numbers behind a figure are written as they are', () => {
  expect(figureCsv(figures.get('effort')!.data)).toBe('habitat,nights\noak,120.5\nash,\n')
})

test('JSON is the same value, in the same order, with short things on one line', () => {
  const value = {
    b: [1, 2],
    a: {label: 'x'.repeat(120), value: 1},
    m: new Map([['k', 'v']]),
    gone: undefined,
    e: [],
    n: null
  }
  const text = json(value)
  expect(text).toBe(
    `{\n  "b": [1, 2],\n  "a": {\n    "label": "${'x'.repeat(120)}",\n    "value": 1\n  },\n  "m": {"k": "v"},\n  "e": [],\n  "n": null\n}\n`
  )
  fc.assert(
    fc.property(fc.jsonValue(), (any) => {
      expect(JSON.parse(json(any))).toEqual(JSON.parse(JSON.stringify(any)))
    })
  )
})

test('JSON refuses numbers that are not finite', () => {
  expect(() => json({a: [Number.NaN]})).toThrow(RangeError)
})

test('works cited are written for BibTeX with its signs escaped', () => {
  expect(bibtex(references)).toContain(
    '@book{chao-2014-other,\n  author = {Chao, A. and Chiu, C. H. and Jost, L.},\n  year = {2014},\n  title = {Unifying diversity},\n  publisher = {A \\& B\\_C}\n}\n'
  )
  const odd = bibtex([
    {
      id: 'a b{c',
      type: 'article-journal',
      title: 'On <i>Carabus</i> in Wales: 5 % {x} \\ ~^$#',
      page: '1–9',
      author: [{literal: 'The Group & Co'}]
    }
  ])
  expect(odd).toBe(
    '@article{a-b-c,\n  author = {{The Group \\& Co}},\n  title = {On \\textit{Carabus} in {Wales}: 5 \\% \\{x\\} \\textbackslash{} \\textasciitilde{}\\textasciicircum{}\\$\\#},\n  pages = {1--9}\n}\n'
  )
})
