/**
 * Breaks a label at spaces into lines of at most so many characters, joined by a newline. A longer word is cut
 * apart, and what does not fit into the last line ends with an ellipsis: the whole label is in the picture's
 * description and in its data.
 */
export function wrapLabel(label: string, charactersPerLine: number, maximumLines: number): string {
  const lines: string[] = ['']
  for (const word of wordsOf(label, charactersPerLine)) {
    const line = lines.at(-1) ?? ''
    const longer = line === '' ? word : `${line} ${word}`
    if (longer.length <= charactersPerLine) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  if (lines.length <= maximumLines) return lines.join('\n')
  const kept = lines.slice(0, maximumLines)
  const last = kept.pop() ?? ''
  return [...kept, `${last.slice(0, charactersPerLine - 1)}…`].join('\n')
}

function wordsOf(label: string, longest: number): string[] {
  return label
    .split(/\s+/)
    .filter((word) => word !== '')
    .flatMap((word) => {
      const characters = [...word]
      const parts = Math.ceil(characters.length / longest)
      return Array.from({length: parts}, (_, part) =>
        characters.slice(part * longest, (part + 1) * longest).join('')
      )
    })
}
