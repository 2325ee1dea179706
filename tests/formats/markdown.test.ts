import fc from 'fast-check'
import type {Nodes, PhrasingContent, Root} from 'mdast'
import {toString as wordsOf} from 'mdast-util-to-string'
import remarkGfm from 'remark-gfm'
import remarkParse from 'remark-parse'
import remarkStringify from 'remark-stringify'
import {unified} from 'unified'
import {expect, test} from 'vitest'
import {markdown, markdownStyle} from '../../src/formats/markdown.ts'
import {markdownTree} from '../../src/formats/markdown-tree.ts'
import {composed, references} from '../report/compose.ts'
import {smallResults} from '../report/small-results.ts'
import {everything, pages} from './page.ts'

const documents = {scope: {documents: pages}}

test('figures, tables and references read well as plain text', () => {
  const text = markdown(composed(everything, documents).document)
  expect(text).toContain(
    '![Bars for two habitats.](figures/effort.svg)\n\n**Figure 1.** Effort of *two* habitats.\n'
  )
  expect(text).toContain('**Table 1.** Rates of taxa | *as caught*.\n\n| Taxon')
  expect(text).toContain('| *Carabus nemoralis* Müller, 1764 |                   53.3 (a) |\n')
  expect(text).toContain('| **All**                          |                    **123** |\n')
  expect(text).toContain('\n\n(a) One site only. (b) Not defined, because no traps stood there.\n')
  expect(text).toContain('**Table 2.** Nothing. *Nothing was caught.*\n')
  expect(text).toContain('(Chao et al. 2014; Chao & Jost 2012)); see Figure 1 and Table 1.')
  expect(text).toContain('<https://doi.org/10.1890/11-1952.1>\n')
  expect(text).toContain('<jane@example.org> or <https://example.org/a_b>')
})

test('times, ratios and directives of a study stand as they are', () => {
  const text = markdown(composed('At 12:30, 1:2.\n\n:text[stated.permits]').document)
  expect(text).toBe('At 12:30, 1:2.\n\n\\*none\\* | \\<script>alert(1)\\</script> :value\\[seed]\n')
})

test('Markdown reads back to the tree that it was written from', () => {
  const {document} = composed(everything, documents)
  expect(readBack(markdown(document))).toEqual(plain(markdownTree(document)))
})

test('whatever a study says reads back letter by letter', () => {
  const text = fc.string({
    unit: fc.constantFrom(...'ab1 *_`|<>[]()#+-.!:\\&~@/=>\n', 'https://', 'a@b.org'),
    minLength: 1,
    maxLength: 30
  })
  fc.assert(
    fc.property(text, (title) => {
      const results = {...smallResults, stated: {...smallResults.stated, title}}
      const {document} = composed(
        '# Study\n\nOf :text[stated.title] end.\n\n- :text[stated.title]\n\n:::table{name=said}\nx\n:::',
        {
          results,
          tables: new Map([
            [
              'said',
              {
                name: 'said',
                columns: [{head: title, align: 'left'}],
                rows: [[{type: 'text', text: title}]],
                empty: ''
              }
            ]
          ])
        }
      )
      expect(readBack(markdown(document))).toEqual(plain(markdownTree(document)))
    }),
    {examples: [['<&@a>'], ['a@a.a`'], ['www.a.b'], ['http://a.b:80']]}
  )
})

test('texts and cells that take a short way are written as the long way writes them', () => {
  const {handlers: _, ...style} = markdownStyle
  const writer = unified().use(remarkGfm).use(remarkStringify, markdownStyle)
  const thorough = unified().use(remarkGfm).use(remarkStringify, style)
  const words = fc.string({
    unit: fc.constantFrom(
      ...'aw1 %.,-/:;()=+\'"?−²\u00a0*&|<@\n',
      ...['http', 'www', '. ', ' (', ') ', ' = ', ' + ', '12', '1) ', '<0.1 ']
    )
  })
  const phrase = fc.tuple(words, words, words, fc.constantFrom('emphasis', 'strong', 'delete'))
  fc.assert(
    fc.property(phrase, phrase, ([before, inner, after, type], [one, other, last]) => {
      const text = (value: string) => ({type: 'text' as const, value})
      const children = [text(before), {type, children: [text(inner)]}, text(after)] as PhrasingContent[]
      const marked = [{type, children: [text(one)]}] as PhrasingContent[]
      const cells = [children, marked, [text(other)], []].map((cell) => ({
        type: 'tableCell' as const,
        children: cell
      }))
      const root: Root = {
        type: 'root',
        children: [
          {type: 'paragraph', children},
          {type: 'paragraph', children: [text(last)]},
          {type: 'heading', depth: 2, children: [text(one)]},
          {type: 'table', align: ['left', 'right'], children: [{type: 'tableRow', children: cells}]}
        ]
      }
      expect(writer.stringify(root)).toBe(thorough.stringify(root))
    }),
    {numRuns: 3000}
  )
})

test('a document without figures holds no stray marks', () => {
  expect(markdown(composed('# A\n\nB :cited[chao-2014].\n\n## R\n\n::references').document)).toBe(
    '# A\n\nB Chao et al. (2014).\n\n## R\n\nChao, A., Gotelli, N. J. & Hsieh, T. C. (2014). Rarefaction and extrapolation. *Ecological Monographs*.\n'
  )
  expect(references).toHaveLength(3)
})

function readBack(text: string): unknown {
  return plain(unified().use(remarkParse).use(remarkGfm).parse(text) as Root)
}

/** A tree as values: without places, texts side by side as one, and addresses as words whether they are links or not. */
function plain(node: Nodes): unknown {
  const {position: _, data: __, ...rest} = node
  if (!('children' in rest)) return rest
  const children: Nodes[] = []
  for (const child of (rest.children as Nodes[]).map(withoutAutomaticLink)) {
    const before = children.at(-1)
    if (child.type === 'text' && before?.type === 'text')
      children[children.length - 1] = {type: 'text', value: before.value + child.value}
    else if (child.type !== 'text' || child.value !== '') children.push(child)
  }
  return {...rest, children: children.map(plain)}
}

function withoutAutomaticLink(node: Nodes): Nodes {
  const words = wordsOf(node)
  const isAutomatic = node.type === 'link' && [words, `mailto:${words}`, `http://${words}`].includes(node.url)
  return isAutomatic ? {type: 'text', value: words} : node
}
