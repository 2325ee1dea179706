const wide =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u
const narrow = /^[\p{Mn}\p{Me}]$/u

/** Columns that a text takes on a terminal. */
export function textWidth(text: string): number {
  let width = 0
  for (const character of text) width += narrow.test(character) ? 0 : wide.test(character) ? 2 : 1
  return width
}

export function padRight(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - textWidth(text)))
}

export function padLeft(text: string, width: number): string {
  return ' '.repeat(Math.max(0, width - textWidth(text))) + text
}

/** Text in lines of at most `width` columns, broken at spaces; a word that is longer keeps its line to itself. */
export function wrapText(text: string, width: number): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (word === '') continue
    if (line === '') line = word
    else if (textWidth(line) + 1 + textWidth(word) <= width) line += ` ${word}`
    else {
      lines.push(line)
      line = word
    }
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line]
}
