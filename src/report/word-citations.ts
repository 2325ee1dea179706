import type {RootContent} from 'mdast'
import {citationWords, sortWorks} from './citation-words.ts'
import type {Composition} from './composition.ts'
import type {ReferenceEntry} from './document.ts'
import {formatWork} from './format-work.ts'

/** Words every citation, now that all are known, and gives the works in the order of the list of references. */
export function wordCitations(composition: Composition): ReferenceEntry[] {
  const keys = new Set(composition.citedWorks.map(({node}) => node.key))
  const works = sortWorks([...composition.works.values()].filter(({id}) => keys.has(id)))
  const words = citationWords(works)
  for (const {node, inText} of composition.citedWorks) {
    const {names = node.key, year = 'n.d.'} = words.get(node.key) ?? {}
    node.children = [{type: 'text', value: inText ? `${names} (${year})` : `${names} ${year}`}]
  }
  return works.map((work) => ({
    type: 'referenceEntry',
    key: work.id,
    children: formatWork(work, words.get(work.id)?.year ?? 'n.d.')
  }))
}

/** The same blocks with the works in every list of references. */
export function fillReferenceLists(
  blocks: readonly RootContent[],
  entries: readonly ReferenceEntry[]
): RootContent[] {
  return blocks.map((block) => (block.type === 'referenceList' ? {...block, children: [...entries]} : block))
}
