/**
 * Where the cells of a table begin, for a million rows at a few bytes a cell: lines in one typed array, columns in
 * another; only records with a line break inside a quoted cell need a line for each cell.
 */
export class CellPlaces {
  readonly #width: number
  readonly #delimiter: string
  #rows = 0
  #lines = new Uint32Array(256)
  #columns: Uint16Array
  readonly #brokenLines = new Map<number, readonly number[]>()

  /** @param width number of header cells; cells beyond it are placed at the row's start. */
  constructor(width: number, delimiter: string) {
    this.#delimiter = delimiter
    this.#width = width
    this.#columns = new Uint16Array(256 * width)
  }

  /** Note the next row. `raw` is the record's own text, given only when quotes make lengths unreliable. */
  add(line: number, cells: readonly string[], raw?: string): void {
    const row = this.#rows++
    if (row >= this.#lines.length) this.#grow()
    this.#lines[row] = line
    const base = row * this.#width
    const count = Math.min(cells.length, this.#width)
    if (raw !== undefined) {
      this.#addQuoted(row, line, raw, count)
      return
    }
    let column = 1
    for (let index = 0; index < count; index++) {
      this.#columns[base + index] = Math.min(column, 65_535)
      column += (cells[index] as string).length + 1
    }
  }

  line(row: number, index = 0): number {
    return this.#brokenLines.get(row)?.[index] ?? this.#lines[row] ?? 1
  }

  column(row: number, index: number): number {
    return index < this.#width ? this.#columns[row * this.#width + index] || 1 : 1
  }

  /** Walk the record: a delimiter or line break counts only outside quotes, and quotes open only where a cell begins. */
  #addQuoted(row: number, line: number, raw: string, count: number): void {
    const delimiterLines: number[] = [line]
    const base = row * this.#width
    let quoted = false
    let begun = false
    let opened = false
    let column = 1
    let currentLine = line
    let index = 0
    this.#columns[base] = 1
    for (const character of raw) {
      if (character === '"') {
        if (!begun) opened = true
        if (opened) quoted = !quoted
      }
      begun = true
      column += character.length
      if (character === '\n') {
        column = 1
        currentLine += 1
      } else if (!quoted && character === this.#delimiter && index + 1 < count) {
        index += 1
        begun = false
        opened = false
        this.#columns[base + index] = Math.min(column, 65_535)
        delimiterLines[index] = currentLine
      }
    }
    if (delimiterLines.some((cellLine) => cellLine !== line)) this.#brokenLines.set(row, delimiterLines)
  }

  #grow(): void {
    const size = this.#lines.length * 2
    const lines = new Uint32Array(size)
    lines.set(this.#lines)
    this.#lines = lines
    const columns = new Uint16Array(size * this.#width)
    columns.set(this.#columns)
    this.#columns = columns
  }
}
