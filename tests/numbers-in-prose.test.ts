import {beforeAll, describe, expect, test} from 'vitest'
import {readAssets} from '../src/files/read-assets.ts'
import type {Results} from '../src/model/results.ts'
import {type Assets, buildReport} from '../src/pipeline.ts'
import {exampleStudy} from './example-season/make-example.ts'
import {memorySource} from './memory-source.ts'
import {numbersIn, printedNumbers} from './printed-numbers.ts'

/** Documents whose prose is looked at: one of each kind. */
const looked = ['chapter.md', 'season.md', 'index.html', 'site-OAK2.md', 'site-HAY3.md']

let assets: Assets
let before: Built
let after: Built

interface Built {
  readonly results: Results
  readonly documents: ReadonlyMap<string, string>
}

async function build(files: ReadonlyMap<string, string>): Promise<Built> {
  const report = await buildReport(memorySource(files), assets)
  if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
  const text = (name: string): string => String(report.outputs.get(name))
  return {
    results: JSON.parse(text('results.json')) as Results,
    documents: new Map(looked.map((name) => [name, text(name)]))
  }
}

/** Sentences and list items outside tables, figures, code and references. */
function proseOf(markdown: string): readonly string[] {
  const [body = ''] = markdown.split(/^#+ References$/m)
  return body
    .split('\n')
    .filter((line) => line !== '' && !/^\s*\||^!\[|^```/.test(line))
    .flatMap((line) => line.split(/(?<=[.!?]) (?=\p{Lu})/u))
}

beforeAll(async () => {
  assets = await readAssets()
  const files = exampleStudy()
  before = await build(files)
  const lines = (files.get('catch.csv') ?? '').split('\n')
  const line = lines.findIndex((text) => text.startsWith('OAK2-') && text.includes('Pterostichus madidus'))
  const cells = (lines[line] ?? '').split(',')
  const count = (lines[0] ?? '').split(',').indexOf('count')
  cells[count] = String(Number(cells[count]) + 17)
  lines[line] = cells.join(',')
  after = await build(new Map([...files, ['catch.csv', lines.join('\n')]]))
}, 120_000)

describe('every number of the prose', () => {
  test.each(looked.filter((name) => name.endsWith('.md')))(
    'of %s stands in results.json, in a template or in a text of the authors',
    (name) => {
      const known = new Set([...printedNumbers(before.results).values()].flat())
      const written = [...assets.templates.entries()].flatMap(([file, text]) =>
        file.endsWith('.md') ? numbersIn(text) : []
      )
      const works = numbersIn(assets.templates.get('references.json') ?? '')
      const authors = [...exampleStudy()].flatMap(([path, text]) =>
        path.startsWith('text/') ? numbersIn(text) : []
      )
      // Dates are printed in words: 2025-06-14 is '14 June 2025'.
      const days = [...JSON.stringify(before.results).matchAll(/(\d{4})-(\d{2})-(\d{2})/g)].flatMap(
        ([, year = '', month = '', day = '']) => [year, String(Number(month)), String(Number(day))]
      )
      const version = numbersIn(assets.toolVersion)
      const allowed = new Set([...known, ...written, ...works, ...authors, ...days, ...version])
      // Numbering of headings, figures and tables is the document's own, and so is the length of a table that is cut.
      const prose = proseOf(before.documents.get(name) ?? '').map((sentence) =>
        sentence
          .replace(/^The first \d+ of \d+ rows; /, '')
          .replace(/\b(Figures?|Tables?) \d+( and \d+|(, \d+)* and \d+)?/g, '')
      )
      const strange = prose.flatMap((sentence) =>
        numbersIn(sentence)
          .filter((number) => !allowed.has(number))
          .map((number) => `${number}: ${sentence}`)
      )
      expect(strange).toEqual([])
    }
  )
})

describe('one count corrected in catch.csv', () => {
  test('moves the numbers that depend on it', () => {
    const [old, now] = [printedNumbers(before.results), printedNumbers(after.results)]
    const moved = [...old]
      .filter(([path, numbers]) => JSON.stringify(now.get(path)) !== JSON.stringify(numbers))
      .map(([path]) => path)
    expect(moved).toContain('/catch/individuals')
    expect(moved).toContain('/catch/rate')
    expect(moved.length).toBeGreaterThan(50)
    // Effort comes from visits and not from catch.
    expect(moved.filter((path) => path.startsWith('/effort'))).toEqual([])
  })

  test.each(looked.filter((name) => name !== 'site-HAY3.md'))(
    'changes every sentence of %s that named one of them',
    (name) => {
      const [old, now] = [printedNumbers(before.results), printedNumbers(after.results)]
      const still = new Set([...now.values()].flat())
      // A number that no result has any more may stand in no sentence any more.
      const gone = new Set(
        [...old.values()].flat().filter((number) => !still.has(number) && number.length > 2)
      )
      const prose = (built: Built): readonly string[] =>
        proseOf((built.documents.get(name) ?? '').replace(/<(style|svg)[\s\S]*?<\/\1>/g, ''))
      const dependent = prose(before).filter((sentence) =>
        numbersIn(sentence).some((number) => gone.has(number))
      )
      expect(dependent.length).toBeGreaterThan(0)
      const left = prose(after).filter((sentence) => numbersIn(sentence).some((number) => gone.has(number)))
      expect(left).toEqual([])
      const unchanged = new Set(prose(after))
      expect(dependent.filter((sentence) => unchanged.has(sentence))).toEqual([])
    }
  )

  test('leaves the report of another site as it was, but for what the sites have in common', () => {
    const own = (built: Built): readonly string[] =>
      proseOf(built.documents.get('site-HAY3.md') ?? '').filter((sentence) => !sentence.includes('Over all'))
    expect(own(after)).toEqual(own(before))
  })
})
