import Papa from 'papaparse'

/** One record of a CSV file with the place of its first character and of each of its cells. */
export interface CsvRow {
  readonly cells: readonly string[]
  /** Physical line of the record's first character, 1-based. */
  readonly line: number
  /** The record as written, where quotes keep cell lengths from telling where cells begin. */
  readonly raw?: string
  /** Set when a quote was opened and never properly closed: the cells are then the pieces of this one line. */
  readonly brokenQuote: boolean
}

/** No honest record is longer than this many characters: beyond it an unclosed quote is at work. */
const longestRecord = 4_000_000

type ParserResult = {data: string[][]; errors: {type: string; code: string}[]; meta: {cursor: number}}

/**
 * Records of a CSV text that comes in chunks. Papaparse finds the cells; this keeps count of physical lines, and
 * when a quote is malformed gives up that one line instead of letting it swallow the rest of the file.
 */
export async function* csvRows(chunks: AsyncIterable<string>, delimiter: string): AsyncIterable<readonly CsvRow[]> {
  const state = {line: 1}
  let pending = ''
  for await (const chunk of chunks) {
    // So long without a record's end, an unclosed quote is at work: reading on would only swallow more.
    const {rows, rest} = drain(pending + chunk, delimiter, state, true, pending.length > longestRecord)
    pending = rest
    if (rows.length > 0) yield rows
  }
  if (pending !== '') yield drain(pending, delimiter, state, false, false).rows
}

function drain(
  start: string,
  delimiter: string,
  state: {line: number},
  moreComes: boolean,
  giveUpFirst: boolean
): {rows: readonly CsvRow[]; rest: string} {
  const rows: CsvRow[] = []
  let rest = giveUpFirst ? start.slice(giveUpLine(start, 0, delimiter, rows, state)) : start
  let again = rest !== ''
  while (again) {
    const batch = readRows(rest, delimiter, state, moreComes)
    for (const row of batch.rows) rows.push(row)
    rest = rest.slice(batch.consumed)
    again = batch.broken && rest !== ''
  }
  return {rows, rest}
}

interface Batch {
  readonly rows: CsvRow[]
  readonly consumed: number
  readonly broken: boolean
}

function readRows(text: string, delimiter: string, state: {line: number}, moreComes: boolean): Batch {
  const rows: CsvRow[] = []
  let consumed = 0
  let broken = false
  const parser = new Papa.Parser({
    delimiter,
    newline: '\n',
    quoteChar: '"',
    step: (result: unknown) => {
      const {data, errors, meta} = result as ParserResult
      if (errors.some(({type}) => type === 'Quotes')) {
        broken = true
        parser.abort()
        return
      }
      for (const cells of data) {
        const {line} = state
        let plainLength = cells.length - 1
        for (const cell of cells) {
          plainLength += cell.length
          if (cell.includes('\n')) state.line += cell.split('\n').length - 1
        }
        state.line += 1
        const plain = meta.cursor - consumed - plainLength <= 1
        rows.push(plain ? {cells, line, brokenQuote: false} : {cells, line, brokenQuote: false, raw: text.slice(consumed, meta.cursor)})
      }
      consumed = meta.cursor
    }
  })
  // Errors of an unfinished last record do not count while more is to come: a chunk may end inside quotes.
  parser.parse(text, 0, moreComes)
  if (broken) consumed = giveUpLine(text, consumed, delimiter, rows, state)
  else if (!moreComes) consumed = text.length
  return {rows, consumed, broken}
}

/** Take the physical line of a malformed quote as a record of its own, marked broken; reading goes on behind it. */
function giveUpLine(text: string, start: number, delimiter: string, rows: CsvRow[], state: {line: number}): number {
  const end = text.indexOf('\n', start)
  const line = text.slice(start, end === -1 ? text.length : end)
  rows.push({cells: line.split(delimiter), line: state.line, brokenQuote: true})
  state.line += 1
  return end === -1 ? text.length : end + 1
}
