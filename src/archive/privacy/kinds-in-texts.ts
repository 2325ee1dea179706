import type {ArchiveEntry} from '../../model/archive-entry.ts'
import {textPieces} from './text-pieces.ts'
import {waysToWrite, wordSearch} from './word-search.ts'

/** An author's text that names a kind which is not shown with a place: only a person can tell whether it says where. */
export interface KindInText {
  readonly file: string
  readonly kind: string
}

/** The texts among the files of a study that name such kinds. */
export async function kindsInTexts(
  raw: readonly ArchiveEntry[],
  kinds: readonly string[]
): Promise<readonly KindInText[]> {
  if (kinds.length === 0) return []
  const found: KindInText[] = []
  for (const entry of raw) {
    if (!/\.(md|ya?ml|txt)$/i.test(entry.path)) continue
    const words = wordSearch(kinds.flatMap(waysToWrite))
    for await (const [text, end] of textPieces(entry)) words.add(text, end)
    for (const kind of kinds) if (waysToWrite(kind).some(words.has)) found.push({file: entry.path, kind})
  }
  return found
}
