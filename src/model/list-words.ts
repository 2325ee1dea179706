/** `a`, `a and b`, `a, b and c`; with another word before the last, `a, b or c`. */
export function listWords(items: readonly string[], last: 'and' | 'or' = 'and'): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`
}
