import {toString as wordsOf} from 'mdast-util-to-string'
import {expect, test} from 'vitest'
import {blocksOf, composed, wordsFrom} from './compose.ts'

test.each([
  'at 12:30',
  'ratio 1:2, a:b and host:80',
  'see note:value of',
  ':smile:',
  'std::vector',
  'a :b c'
])('plain prose stays as it is: %s', (prose) => {
  expect(wordsFrom(prose)).toBe(prose)
})

test('a directive that nobody knows keeps its words, and those of the directives in it', () => {
  const {document, problems} = composed('x :note[see :value[seed] ok]{a="b"} y')
  expect(wordsOf(document.tree)).toBe('x :note[see 1 ok]{a="b"} y')
  expect(problems).toEqual(["chapter.md:1:3: unknown directive 'note'"])
})

test('the text of a study is never read as Markdown, HTML or directives', () => {
  const {document, problems} = composed(':text[stated.permits]')
  expect(problems).toEqual([])
  expect(document.tree.children).toEqual([
    {type: 'paragraph', children: [{type: 'text', value: '*none* | <script>alert(1)</script> :value[seed]'}]}
  ])
})

test('raw HTML is left out and told, comments are left out', () => {
  const {document, problems} = composed('<!-- note -->\n\na <b>bold</b> word\n\n<script>alert(1)</script>')
  expect(wordsOf(document.tree)).toBe('a bold word')
  expect(JSON.stringify(document.tree)).not.toContain('html')
  expect(problems).toEqual(['chapter.md:3:3: raw HTML is left out', 'chapter.md:5:1: raw HTML is left out'])
})

test('links that run something, and pictures of another host, are left out but for their words', () => {
  const {document, problems} = composed(
    '[a](javascript:alert(1)) [b](https://example.org) ![c](https://example.org/x.png) ![d](photos/d.jpg)'
  )
  expect(JSON.stringify(document.tree)).not.toMatch(/javascript|x\.png/)
  expect(wordsOf(document.tree)).toBe('a b c d')
  expect(problems).toHaveLength(2)
})

test('empty paragraphs, headings and items are dropped', () => {
  const gone = ':given[gone]{path=stated.funding}'
  expect(blocksOf(`${gone}\n\n## ${gone}\n\n- ${gone}\n- kept\n\n> ${gone}\n\n*${gone}*`)).toEqual(['kept'])
})

test.each([
  ['a :given[gone]{path=stated.funding} b', 'a b'],
  ['a :given[gone]{path=stated.funding}.', 'a.'],
  ['a :given[gone]{path=stated.funding}, b', 'a, b'],
  ['a (:given[gone]{path=stated.funding}) .', 'a.'],
  ['a:given[ and]{path=effort.net}\n:given[gone]{path=stated.funding}\nb', 'a and b'],
  [':given[gone]{path=stated.funding} b', 'b'],
  ['a :given[gone]{path=stated.funding} .5', 'a .5'],
  ['a  b', 'a  b']
])('what given leaves behind is made good: %s', (template, words) => {
  expect(wordsFrom(template)).toBe(words)
})

test('the text of the author goes below its section, calls up numbers, and keeps its footnotes apart', () => {
  const texts = new Map([
    [
      'text/introduction.md',
      '# Why\n\nOf :value[effort.net] at 12:30[^1] [x][y].\n\n#### How\n\n[^1]: Note.\n\n[y]: https://example.org'
    ]
  ])
  const {document, problems} = composed(
    '# T\n\n## Introduction\n\n::author{place=introduction}\n\n::author{place=methods}',
    {texts}
  )
  expect(problems).toEqual([])
  expect(
    document.tree.children.map((node) => [node.type, 'depth' in node ? node.depth : 0, wordsOf(node)])
  ).toEqual([
    ['heading', 1, 'T'],
    ['heading', 2, 'Introduction'],
    ['heading', 3, 'Why'],
    ['paragraph', 0, 'Of 240 at 12:30 x.'],
    ['heading', 4, 'How'],
    ['footnoteDefinition', 0, 'Note.']
  ])
  expect(JSON.stringify(document.tree)).toContain('"identifier":"introduction-1"')
})

test('a problem in a text of the author has its place there', () => {
  const texts = new Map([['text/introduction.md', 'a\n\nb :value[nope]\n\n::author{place=introduction}']])
  expect(composed('::author{place=introduction}', {texts}).problems).toEqual([
    "text/introduction.md:3:3: unknown path 'nope'",
    "text/introduction.md:5:1: a text of the author's cannot call up another one"
  ])
})

test('a text that study.yaml names and that is not there is a problem', () => {
  expect(composed('::author{place=discussion}').problems[0]).toContain(
    "names 'text/missing.md' for discussion"
  )
})

test('headings come in order, with one of the first level', () => {
  const {document} = composed('# A\n\n### B\n\n# C\n\n##### D')
  expect(document.tree.children.map((node) => ('depth' in node ? node.depth : 0))).toEqual([1, 2, 2, 3])
  expect(document.title).toBe('A')
})

test('a mark stands where a problem was, and no word of the machinery', () => {
  const {document} = composed('a :value[nope] b\n\n:::figure{name=nope}\nx\n:::')
  expect(wordsOf(document.tree)).toBe('a [nope?] b[nope?]')
})
