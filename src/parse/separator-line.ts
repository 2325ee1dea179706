const separator = /^"?sep=(.)"?(?:\1|[,;\t])*$/i

/** The separator that a first line such as `sep=;` tells to spreadsheet programs. */
export function separatorLine(start: string): string | undefined {
  return separator.exec((start.split('\n', 1)[0] ?? '').trim())?.[1]
}

/** Whether a record is such a line: cut at its own sign, only `sep=` is left of it. */
export function isSeparatorRecord(cells: readonly string[]): boolean {
  return (
    /^"?sep=/i.test((cells[0] ?? '').trim()) &&
    cells.slice(1).every((cell) => ['', '"'].includes(cell.trim()))
  )
}
