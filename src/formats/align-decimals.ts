const figureSpace = '\u2007'
const punctuationSpace = '\u2008'

/**
 * The space that each number of a right-aligned column needs after it so that the decimal points stand below each
 * other: figure spaces are as wide as a digit. Empty for what is no number.
 */
export function alignDecimals(texts: readonly string[]): string[] {
  const decimals = texts.map(decimalsOf)
  const most = Math.max(0, ...decimals.map((count) => count ?? 0))
  return decimals.map((count) => {
    if (count === undefined || count === most) return ''
    return (count === 0 ? punctuationSpace : '') + figureSpace.repeat(most - count)
  })
}

/** Digits after the point of the last number of a text such as `1,234.5` or `3.2 to 12.0`; undefined without a number. */
function decimalsOf(text: string): number | undefined {
  if (text === '–') return 0
  const [, fraction] = /\d(?:\.(\d+))?$/.exec(text) ?? [undefined, undefined]
  return /\d$/.test(text) ? (fraction?.length ?? 0) : undefined
}
