import {HtmlValidate} from 'html-validate'
import remarkGfm from 'remark-gfm'
import remarkParse from 'remark-parse'
import remarkRecommended from 'remark-preset-lint-recommended'
import remarkStringify from 'remark-stringify'
import {unified} from 'unified'
import {beforeAll, describe, expect, test} from 'vitest'
import {readAssets} from '../../src/files/read-assets.ts'
import {markdownStyle} from '../../src/formats/markdown.ts'
import type {Outputs} from '../../src/model/source.ts'
import {buildReport} from '../../src/pipeline.ts'
import {quickExample} from '../example-report.ts'
import {twentyStudies} from '../language/twenty-studies.ts'
import {memorySource} from '../memory-source.ts'

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  rules: {
    // The standard has it in small letters, as everything else on these pages.
    'doctype-style': 'off',
    // A title holds the title of the study, which is as long as its authors made it.
    'long-title': 'off'
  }
})

/** The example, whose pages are counted, and studies that leave out or overfill one thing each. */
const studies: Readonly<
  Record<string, {readonly write: () => ReadonlyMap<string, string>; readonly pages: number}>
> = {
  'the example': {write: quickExample, pages: 15},
  ...Object.fromEntries(
    [
      ['one trap', 4],
      ['no catch', 9],
      ['forty habitats', 45],
      ['everything unsorted', 9],
      ['old data with effort by site', 10],
      ['private coordinates', 9]
    ].map(([name, pages]) => [name, {write: twentyStudies[name!]!, pages: Number(pages)}])
  )
}

describe.each(Object.entries(studies))('of %s', (_, {write, pages: expected}) => {
  let outputs: Outputs
  const named = (ending: string) =>
    [...outputs].flatMap(([name, content]) =>
      name.endsWith(ending) ? [[name, String(content)] as const] : []
    )

  beforeAll(async () => {
    const report = await buildReport(memorySource(write()), await readAssets())
    if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
    outputs = report.outputs
  }, 120_000)

  test('every page is valid HTML', () => {
    const pages = named('.html')
    expect(pages).toHaveLength(expected)
    const faults = pages.flatMap(([name, text]) =>
      validator
        .validateStringSync(text, name)
        .results.flatMap(({messages}) =>
          messages.map(({line, ruleId, message}) => `${name}:${line} ${ruleId}: ${message}`)
        )
    )
    expect(faults).toEqual([])
  }, 120_000)

  test('every Markdown document passes the recommended checks of Markdown', async () => {
    const documents = named('.md')
    expect(documents.map(([name]) => name)).toEqual(expect.arrayContaining(['chapter.md', 'season.md']))
    const checks = unified().use(remarkParse).use(remarkGfm).use(remarkRecommended).use(remarkStringify)
    for (const [name, text] of documents) {
      const {messages} = await checks.process(text)
      expect(messages.map(({line, message}) => `${name}:${line} ${message}`)).toEqual([])
    }
  }, 120_000)

  test('every Markdown document, read and written again, is the same', () => {
    const reader = unified().use(remarkParse).use(remarkGfm)
    const writer = unified().use(remarkGfm).use(remarkStringify, markdownStyle)
    // The page of rules is no document of the study: it is written line by line, without padding.
    const documents = named('.md').filter(([one]) => one !== 'rules.md')
    expect(documents).not.toEqual([])
    for (const [name, text] of documents) {
      expect([name, writer.stringify(reader.parse(text))]).toEqual([name, text])
    }
  }, 120_000)
})
