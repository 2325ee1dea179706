/** The id of a figure, table or reference on a page: its name, with a dash for whatever an id may not hold. */
export function anchorName(kind: 'figure' | 'table' | 'ref', name: string): string {
  return `${kind}-${name.replace(/[^\p{L}\p{N}._-]+/gu, '-')}`
}

/** The id that a reference such as `figure-effort` in the text leads to. */
export function anchorOf(target: string): string {
  const [kind = '', ...name] = target.split('-')
  return anchorName(kind === 'figure' ? 'figure' : 'table', name.join('-'))
}
