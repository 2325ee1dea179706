import {freeName} from '../model/free-name.ts'

/** Hands out the ids of one page, each once. */
export interface PageIds {
  /** An id made of words, with a number after it where it is taken. */
  take(words: string): string
}

/**
 * Ids of a page on which some are in use already: those of figures, tables and references. Those of captions and
 * within pictures have an underscore, and none made here has.
 */
export function pageIds(inUse: Iterable<string>): PageIds {
  const used = new Set(inUse)
  return {
    take(words) {
      const plain = words.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()
      const name = plain.replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'section'
      const id = freeName(name, (one) => used.has(one))
      used.add(id)
      return id
    }
  }
}
