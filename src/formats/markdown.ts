import type {Text} from 'mdast'
import remarkGfm from 'remark-gfm'
import remarkStringify, {type Options} from 'remark-stringify'
import {unified} from 'unified'
import type {Document} from '../report/document.ts'
import {markdownTree} from './markdown-tree.ts'

/** Words and numbers that mean nothing but themselves in any place: most cells of tables. */
const plainWords = /^(?! )(?:[\p{L}\p{N} ,%–]|(?<=\d)\.(?=\d))*(?<! )$/u

/** How Markdown is written here, of the ways that mean the same. */
export const markdownStyle: Options = {
  bullet: '-',
  emphasis: '*',
  strong: '*',
  rule: '-',
  fences: true,
  listItemIndent: 'one',
  // The writer tries each sign of each text against some forty patterns.
  handlers: {
    text: ({value}: Text, _parent, state, info) => (plainWords.test(value) ? value : state.safe(value, info))
  },
  // The writer overlooks that `<&@a>` would be read as a mail address.
  unsafe: [{character: '<', after: '[^\\s<>]*@', inConstruct: 'phrasing'}]
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
