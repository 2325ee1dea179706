/** The first names of a list, so that a message stays one line: `W1, W2, W3 and 9 more`. */
export function fewOf(names: readonly string[], shown = 3): string {
  // One name more is no longer than the words that stand for it.
  if (names.length <= shown + 1) return andJoined(names)
  return `${names.slice(0, shown).join(', ')} and ${names.length - shown} more`
}

function andJoined(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
}
