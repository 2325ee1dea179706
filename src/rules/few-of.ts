import {listWords} from '../model/list-words.ts'

/** The first names of a list, so that a message stays one line: `W1, W2, W3 and 9 more`. */
export function fewOf(names: readonly string[], shown = 3): string {
  // One name more is no longer than the words that stand for it.
  if (names.length <= shown + 1) return listWords(names)
  return `${names.slice(0, shown).join(', ')} and ${names.length - shown} more`
}
