import remarkGfm from 'remark-gfm'
import remarkStringify, {type Options} from 'remark-stringify'
import {unified} from 'unified'
import type {Document} from '../report/document.ts'
import {markdownTree} from './markdown-tree.ts'

/** How Markdown is written here, of the ways that mean the same. */
export const markdownStyle: Options = {
  bullet: '-',
  emphasis: '*',
  strong: '*',
  rule: '-',
  fences: true,
  listItemIndent: 'one',
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
