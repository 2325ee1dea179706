import {HtmlValidate} from 'html-validate'
import remarkGfm from 'remark-gfm'
import remarkParse from 'remark-parse'
import remarkRecommended from 'remark-preset-lint-recommended'
import remarkStringify from 'remark-stringify'
import {unified} from 'unified'
import {beforeAll, expect, test} from 'vitest'
import {markdownStyle} from '../../src/formats/markdown.ts'
import {exampleReport} from '../example-report.ts'

const validator = new HtmlValidate({
  extends: ['html-validate:recommended'],
  rules: {
    // The standard has it in small letters, as everything else on these pages.
    'doctype-style': 'off',
    // A title holds the title of the study, which is as long as its authors made it.
    'long-title': 'off'
  }
})

let pages: readonly (readonly [name: string, text: string])[]
let documents: readonly (readonly [name: string, text: string])[]

beforeAll(async () => {
  const outputs = [...(await exampleReport())].map(([name, content]) => [name, String(content)] as const)
  pages = outputs.filter(([name]) => name.endsWith('.html'))
  documents = outputs.filter(([name]) => name.endsWith('.md'))
})

test('every page of the example is valid HTML', () => {
  expect(pages).toHaveLength(15)
  const faults = pages.flatMap(([name, text]) =>
    validator
      .validateStringSync(text, name)
      .results.flatMap(({messages}) =>
        messages.map(({line, ruleId, message}) => `${name}:${line} ${ruleId}: ${message}`)
      )
  )
  expect(faults).toEqual([])
})

test('every Markdown document of the example passes the recommended checks of Markdown', async () => {
  expect(documents.map(([name]) => name)).toEqual(
    expect.arrayContaining(['chapter.md', 'season.md', 'site-OAK2.md'])
  )
  const checks = unified().use(remarkParse).use(remarkGfm).use(remarkRecommended).use(remarkStringify)
  for (const [name, text] of documents) {
    const {messages} = await checks.process(text)
    expect(messages.map(({line, message}) => `${name}:${line} ${message}`)).toEqual([])
  }
})

test('every Markdown document of the example, read and written again, is the same', () => {
  const reader = unified().use(remarkParse).use(remarkGfm)
  const writer = unified().use(remarkGfm).use(remarkStringify, markdownStyle)
  // The page of rules is no document of the study: it is written line by line, without padding.
  for (const [name, text] of documents.filter(([one]) => one !== 'rules.md')) {
    expect([name, writer.stringify(reader.parse(text))]).toEqual([name, text])
  }
})
