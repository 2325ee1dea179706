/** Parts in a row as in a sentence: `a, b and c`; with a mark of its own, `a; b; c`. The separators are made by `between`. */
export function joinWords<Part>(
  parts: readonly Part[],
  between: (separator: string) => Part,
  mark?: string
): Part[] {
  return parts.flatMap((part, index) => {
    if (index === 0) return [part]
    if (mark !== undefined) return [between(`${mark} `), part]
    return [between(index === parts.length - 1 ? ' and ' : ', '), part]
  })
}
