import {markdownTable} from 'markdown-table'
import type {Table, TableCell, Text} from 'mdast'
import remarkGfm from 'remark-gfm'
import remarkStringify, {type Options} from 'remark-stringify'
import {unified} from 'unified'
import type {Document} from '../report/document.ts'
import {markdownTree} from './markdown-tree.ts'

/** What means nothing but itself wherever it stands in a text, and between what. */
const plainSigns = [
  "[\\p{L}\\p{N} ,%–−'’]",
  '(?<=\\d)\\.(?=\\d)',
  '(?<=\\p{L})[-/](?=\\p{L})',
  // After a number at the start of a line they would make a list.
  '(?<=[\\p{L}%])[.)](?= )',
  '(?<=[\\p{Ll}%])(?<!w)[.)]$',
  '(?<=[\\p{L}\\p{N}%)])[:;](?= )',
  '(?<= )\\((?=[\\p{L}\\p{N}])',
  '(?<= )=(?= )'
]

/** Most texts and most cells of tables. */
const plainWords = new RegExp(`^(?! )(?:${plainSigns.join('|')})*(?<! )$`, 'u')

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
    text: ({value}: Text, _parent, state, info) => (plainWords.test(value) ? value : state.safe(value, info)),
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

/** A cell that is plain words and nothing else. */
function plainCell({children: [only, ...more]}: TableCell): string | undefined {
  return only?.type === 'text' && more.length === 0 && plainWords.test(only.value) ? only.value : undefined
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
