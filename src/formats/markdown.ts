import {markdownTable} from 'markdown-table'
import type {Table, TableCell, Text} from 'mdast'
import remarkGfm from 'remark-gfm'
import remarkStringify, {type Options} from 'remark-stringify'
import {unified} from 'unified'
import type {Document} from '../report/document.ts'
import {markdownTree} from './markdown-tree.ts'

/** What means nothing but itself wherever it stands in a text, and between what. */
const plainSigns = [
  '[\\p{L}\\p{N} ,%\'"\\u{80}-\\u{10ffff}]',
  '(?<=[\\p{L}\\p{N}])[-/](?=[\\p{L}\\p{N}])',
  // After `www` it would begin an address.
  '(?<=[\\p{L}\\p{N}])(?<!w)\\.(?=[\\p{L}\\p{N}])',
  '(?<=[\\p{L}%])(?<!w)[.)](?= |$)',
  // After a number at the start of a line it would make a list.
  '(?<=[^\\s\\d] ?\\d+)[.)](?= |$)',
  '(?<=[\\p{L}\\p{N}%)])[:;?](?= )',
  '(?<= )\\((?=[\\p{L}\\p{N}])',
  '(?<= )[=+](?= )',
  '<(?=[\\d.]+ )'
]

/** Most texts and most cells of tables. */
const plainWords = new RegExp(`^(?:${plainSigns.join('|')})*$`, 'iu')

const edgedBySpace = /^ | $/

/** Words that nothing but words stands at either end of: marks of emphasis hold there. */
const onlyWords = /^\p{L}[\p{L} ]*(?<! )$/u

/** How Markdown is written here, of the ways that mean the same. */
export const markdownStyle: Options = {
  bullet: '-',
  emphasis: '*',
  strong: '*',
  rule: '-',
  fences: true,
  listItemIndent: 'one',
  // The writer tries each sign of each text against some forty patterns, and looks what stands around each cell.
  handlers: {
    text: ({value}: Text, _parent, state, info) =>
      plainWords.test(value) && !isBlankAtBreak(value, info) ? value : state.safe(value, info),
    table(node: Table, _parent, state, info) {
      const leave = state.enter('table')
      const rows = node.children.map((row) =>
        row.children.map((cell) => plainCell(cell) ?? state.handle(cell, row, state, info))
      )
      leave()
      return markdownTable(rows, {align: node.align ?? []})
    }
  },
  // The writer overlooks that `<&@a>` would be read as a mail address.
  unsafe: [{character: '<', after: '[^\\s<>]*@', inConstruct: 'phrasing'}]
}

/** Whether a text begins or ends with a space where a line does. */
function isBlankAtBreak(value: string, around: {before: string; after: string}): boolean {
  return edgedBySpace.test(value) && /[\r\n]/.test(around.before + around.after)
}

/** A cell that is empty, or plain words and nothing else, such as the name of a species. */
function plainCell({children: [only, ...more]}: TableCell): string | undefined {
  if (only === undefined) return ''
  if (more.length > 0) return undefined
  if (only.type === 'text')
    return plainWords.test(only.value) && !edgedBySpace.test(only.value) ? only.value : undefined
  if (only.type !== 'emphasis' && only.type !== 'strong') return undefined
  const [inner, ...others] = only.children
  if (inner?.type !== 'text' || others.length > 0 || !onlyWords.test(inner.value)) return undefined
  const mark = only.type === 'strong' ? '**' : '*'
  return mark + inner.value + mark
}

/**
 * The writer knows no directives: with them it would write `12\:30`, and nobody reads directives in a finished
 * document anyway.
 */
const writer = unified().use(remarkGfm).use(remarkStringify, markdownStyle)

/** A document as Markdown (GFM), for reading as it is and for converting. Figures are named as `figures/<name>.svg`. */
export function markdown(document: Document): string {
  return writer.stringify(markdownTree(document))
}
