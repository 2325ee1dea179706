import {type ColumnProfile, ColumnProfiler} from './column-profile.ts'

/** What the rows of a table have in common, column by column. */
export interface TableProfile {
  readonly header: readonly string[]
  /** Which record of the file the header is, from 1. */
  readonly headerRow: number
  readonly columns: readonly ColumnProfile[]
  /** Whether lines for people, which begin with `#`, stand among the rows, and no row begins so. */
  readonly hasComments: boolean
}

/** Takes in a table record by record. */
export class TableProfiler {
  readonly #isHeader: (cells: readonly string[]) => boolean
  readonly #wanted: ReadonlySet<number>
  #header: readonly string[] | undefined
  #records = 0
  #headerRow = 0
  #columns: readonly ColumnProfiler[] = []
  #last: string[] = []
  #comments = 0
  #rowsLikeComments = 0

  /** @param wanted columns, by their place, whose different cells are to be kept. */
  constructor(isHeader: (cells: readonly string[]) => boolean, wanted: ReadonlySet<number>) {
    this.#isHeader = isHeader
    this.#wanted = wanted
  }

  add(cells: readonly string[]): void {
    this.#records += 1
    if (this.#header === undefined) {
      if (!this.#isHeader(cells)) return
      this.#header = cells
      this.#headerRow = this.#records
      this.#columns = cells.map((_, index) => new ColumnProfiler(this.#wanted.has(index)))
      this.#last = cells.map(() => '')
      return
    }
    if (cells.length === 1 && cells[0] === '') return
    if (cells[0]?.startsWith('#')) {
      if (cells.every((cell, index) => index === 0 || cell.trim() === '')) {
        this.#comments += 1
        return
      }
      this.#rowsLikeComments += 1
    }
    for (let index = 0; index < this.#columns.length; index++) {
      const cell = cells[index] ?? ''
      this.#columns[index]!.add(cell)
      this.#last[index] = cell
    }
  }

  /** A record without quotes, as a part of a larger text: rows resemble the row before, and what is the same is not taken out. */
  addPlain(text: string, from: number, to: number, delimiter: string): void {
    if (this.#header === undefined || from === to || text[from] === '#') {
      this.add(text.slice(from, to).split(delimiter))
      return
    }
    this.#records += 1
    let at = from
    for (let index = 0; index < this.#columns.length; index++) {
      const last = this.#last[index]!
      let end = at + last.length
      const isSame =
        at <= to && end <= to && (end === to || text[end] === delimiter) && text.startsWith(last, at)
      if (isSame) this.#columns[index]!.addSame(last === '')
      else {
        end = at > to ? -1 : text.indexOf(delimiter, at)
        if (end === -1 || end > to) end = to
        const cell = text.slice(at, end)
        this.#columns[index]!.add(cell)
        this.#last[index] = cell
      }
      at = end + 1
    }
  }

  profile(): TableProfile | undefined {
    if (this.#header === undefined) return undefined
    return {
      header: this.#header,
      headerRow: this.#headerRow,
      columns: this.#columns.map((column) => column.profile()),
      hasComments: this.#comments > 0 && this.#rowsLikeComments === 0
    }
  }
}

/**
 * Take in a table whose text holds no quotes, line by line.
 *
 * @returns false at the first quotation mark: the table must then be read by records.
 */
export async function profilePlainText(
  chunks: AsyncIterable<string>,
  delimiter: string,
  profiler: TableProfiler
): Promise<boolean> {
  let rest = ''
  for await (const chunk of chunks) {
    if (chunk.includes('"')) return false
    const text = rest + chunk
    let from = 0
    for (let end = text.indexOf('\n'); end !== -1; end = text.indexOf('\n', from)) {
      profiler.addPlain(text, from, end, delimiter)
      from = end + 1
    }
    rest = text.slice(from)
  }
  if (rest !== '') profiler.addPlain(rest, 0, rest.length, delimiter)
  return true
}
