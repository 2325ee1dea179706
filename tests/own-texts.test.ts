import {beforeAll, expect, test} from 'vitest'
import {readAssets} from '../src/files/read-assets.ts'
import type {Finding} from '../src/model/finding.ts'
import {formatPlace} from '../src/model/place.ts'
import type {Outputs} from '../src/model/source.ts'
import {buildReport} from '../src/pipeline.ts'
import {baseStudy} from '../src/rules/base-study.ts'
import {memorySource} from './memory-source.ts'
import {jpegWithPlace, latin, png} from './report/photos.ts'

const settings = `${baseStudy['study.yaml']}
report:
  language: en-US
  text:
    introduction: text/intro.md
    discussion: text/discusion.md
    methodes: text/extra.md
`

const files = {
  ...baseStudy,
  'study.yaml': settings,
  'text/intro.md': `Words of the author: :amount[effort.net].

See :see[table-effort-by-habitat] and :value[effort.nett].

![The trap under its roof](../photos/trap.jpg) <script>alert(1)</script>

![A trap](photos/trapp.jpg)

![](plan.png)
`,
  'text/extra.md': 'Nobody asks for this.',
  'text/discussion.md': 'A discussion under another name.',
  'text/plan.png': png,
  'photos/trap.jpg': jpegWithPlace,
  'photos/large.png': new Uint8Array(5_000_001),
  'templates/letter.md': `# To the owners

In all :amount[catch.individuals] since :date[protocol.firstOpened].

![Large](photos/large.png)

:amount[catch.individuls]
`,
  'templates/en-US/site.md': '# American page of :text[site.name]\n',
  'templates/page.css': '{{nonsense}}'
}

let outputs: Outputs
let findings: readonly Finding[]

beforeAll(async () => {
  const report = await buildReport(memorySource(files), await readAssets())
  if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
  outputs = report.outputs
  findings = report.textFindings
}, 120_000)

const output = (name: string) => String(outputs.get(name))

test("what is wrong in an author's text, template or list of texts is a finding at its place, with the nearest name", () => {
  const line = settings.split('\n').findIndex((text) => text.includes('discusion')) + 1
  expect(
    findings.map(({code, place, message, remedy}) => [code, formatPlace(place), message, remedy])
  ).toEqual(
    expect.arrayContaining([
      ['unknown-name-in-text', 'text/intro.md:3:39', "unknown path 'effort.nett'", 'did you mean `net`?'],
      [
        'picture-not-shown',
        'text/intro.md:7:1',
        "there is no picture 'photos/trapp.jpg'",
        'did you mean `photos/trap.jpg`?'
      ],
      [
        'picture-not-shown',
        'text/intro.md:9:1',
        "the picture 'plan.png' has no words for those who cannot see it",
        'say what it shows between the brackets: `![what it shows](photos/name.jpg)`'
      ],
      [
        'unknown-name-in-text',
        `study.yaml:${line}:17`,
        "study.yaml names 'text/discusion.md' for discussion, and there is no such file",
        'did you mean `text/discussion.md`?'
      ],
      [
        'picture-not-shown',
        'templates/letter.md:5:1',
        "the picture 'photos/large.png' is larger than 5 MB",
        'put a PNG, JPEG, GIF, WebP or plain SVG in its place'
      ],
      [
        'unknown-name-in-text',
        'templates/letter.md:7:1',
        "unknown path 'catch.individuls'",
        'did you mean `individuals`?'
      ]
    ])
  )
  const messages = findings.map(({place, message}) => `${formatPlace(place)} ${message}`)
  expect(messages).toContain(`study.yaml:${line + 1}:5 no document has a place 'methodes' for a text`)
  expect(messages).toContain(
    'templates/page.css:1:1 there is no place {{nonsense}}; the usual file is used instead'
  )
  expect(findings.every(({severity}) => severity === 'caution')).toBe(true)
})

test('raw HTML of an author is left out of every form', () => {
  for (const name of ['chapter.html', 'chapter.md']) expect(output(name)).not.toContain('<script')
  expect(output('chapter.html')).toContain('Words of the author')
})

test('pictures are inside the page and the Word file, and beside the Markdown, without what the camera wrote', () => {
  expect(output('chapter.html')).toMatch(
    /<img src="data:image\/jpeg;base64,[^"]+" alt="The trap under its roof">/
  )
  expect(output('chapter.md')).toContain('![The trap under its roof](photos/trap.jpg)')
  expect(latin(outputs.get('photos/trap.jpg') as Uint8Array)).not.toContain('GPS')
  expect(outputs.get('photos/text/plan.png')).toEqual(png)
  expect(outputs.has('photos/large.png')).toBe(false)
  // The names of the parts of a zip stand in it as they are.
  expect(latin(outputs.get('chapter.docx') as Uint8Array)).toMatch(/word\/media\/[^/]+\.jpg/)
})

test("a template of the study's own is a document of its own, which the front page lists", () => {
  expect(output('letter.html')).toContain('To the owners')
  expect(output('letter.md')).toMatch(/In all \d+ individuals since \w+ \d+, 2026\./)
  expect(outputs.has('letter.docx')).toBe(true)
  expect(output('index.html')).toMatch(/<a href="letter.html">To the owners<\/a>/)
  expect(output('site-W1.html')).toContain('American page of')
})

test('dates and language follow report.language in text, tables and figures', () => {
  const british = /\b\d{1,2} (?:January|April|May|June|July|August|September) \d{4}\b/
  expect(output('chapter.html')).toContain('<html lang="en-US">')
  for (const name of ['chapter.md', 'season.md', 'index.html'])
    expect(british.exec(output(name))?.[0]).toBeUndefined()
  expect(output('season.md')).toMatch(/(?:May|June) \d{1,2}, 2026/)
})

test('every table on the pages of chapter and record has its data one click away', () => {
  for (const name of ['chapter.html', 'season.html']) {
    const blocks = output(name)
      .split(/(?=<div id="table-)/)
      .slice(1)
    const links = blocks
      .filter((block) => /^<div[^>]*>(?:<section class="scroll"[^>]*>)?<table/.test(block))
      .map((block) => /href="(tables\/[^"]+\.csv)"/.exec(block)?.[1])
    expect(links.length).toBeGreaterThan(10)
    expect(links.filter((link) => link === undefined || !outputs.has(decodeURI(link)))).toEqual([])
  }
})

test('the record lists every name that can be called, and links its data', () => {
  const season = output('season.md')
  expect(/^\| effort\.net +\|/m.test(season)).toBe(true)
  expect(output('season.html')).toContain('href="tables/callable-names.csv"')
  expect(output('tables/callable-names.csv')).toContain('\neffort.net,')
  expect(output('tables/callable-tables.csv')).toContain('\ncallable-names,')
  expect(output('tables/callable-tables.csv')).toContain('\neffort-by-habitat,')
  expect(output('tables/callable-figures.csv')).toContain('\neffort,')
  expect(output('tables/callable-works.csv')).toContain('\nchao-jost-2012,')
})
