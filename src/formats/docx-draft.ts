import type {FootnoteDefinition} from 'mdast'
import {visitNodes} from '../report/visit-nodes.ts'
import type {DocxInput} from './docx.ts'
import type {Scale} from './docx-scale.ts'

/** A document while it is being written: what its parts must know of each other. */
export interface Draft {
  readonly input: DocxInput
  readonly scale: Scale
  /** Bookmark of each numbered figure and table by the id that references name, such as `figure-effort`. */
  readonly targets: ReadonlyMap<string, string>
  /** Bookmark of each entry of the list of references by the key of its work. */
  readonly works: ReadonlyMap<string, string>
  readonly definitions: ReadonlyMap<string, FootnoteDefinition>
  /** Number of each footnote that has been called, in the order in which they were called. */
  readonly footnotes: Map<string, number>
  /** First numbers of the numbered lists met so far. */
  readonly listStarts: Set<number>
  /** The next number of a kind of thing: 1, then 2 and so on. The library's own counters are random or always 1. */
  next(kind: 'bookmark' | 'picture' | 'link' | 'list'): number
}

export function newDraft(input: DocxInput, scale: Scale): Draft {
  const targets = new Map<string, string>()
  const works = new Map<string, string>()
  const definitions = new Map<string, FootnoteDefinition>()
  visitNodes(input.document.tree, (node) => {
    if (node.type === 'figureBlock')
      targets.set(`figure-${node.name}`, captionBookmark('Figure', node.number))
    if (node.type === 'tableBlock') targets.set(`table-${node.name}`, captionBookmark('Table', node.number))
    if (node.type === 'referenceEntry') works.set(node.key, `_RefWork${works.size + 1}`)
    if (node.type === 'footnoteDefinition') definitions.set(node.identifier, node)
  })
  const counts = new Map<string, number>()
  return {
    input,
    scale,
    targets,
    works,
    definitions,
    footnotes: new Map(),
    listStarts: new Set(),
    next(kind) {
      const number = (counts.get(kind) ?? 0) + 1
      counts.set(kind, number)
      return number
    }
  }
}

/** Names that begin with an underscore are hidden from the list of bookmarks, as a word processor's own are. */
export function captionBookmark(kind: 'Figure' | 'Table', number: number): string {
  return `_Ref${kind}${number}`
}
