import Papa from 'papaparse'

/** Records of a CSV file that were found together, with what is needed to say where each of their cells stands. */
export interface CsvBatch {
  readonly records: readonly (readonly string[])[]
  /** Physical line, 1-based, of each record's first character. */
  readonly line: (record: number) => number
  /** The record as written, where quotes keep cell lengths from telling where cells begin. */
  readonly raw: (record: number) => string | undefined
  /** Whether a quote was opened in this record and never properly closed: its cells are the pieces of one line. */
  readonly broken: (record: number) => boolean
}

/** The first batch holds at least this many lines, so that a header can be looked for below a title. */
const firstLines = 20

/** No honest record is longer than this many characters: beyond it an unclosed quote is at work. */
const longestRecord = 4_000_000

type ParserResult = {data: string[][]; errors: {type: string}[]; meta: {cursor: number}}

/**
 * Records of a CSV text that comes in chunks. Papaparse finds the cells; this keeps count of physical lines, and
 * when a quote is malformed gives up that one line instead of letting it swallow the rest of the file.
 */
export async function* csvRows(chunks: AsyncIterable<string>, delimiter: string): AsyncIterable<CsvBatch> {
  let pending = ''
  let line = 1
  let started = false
  for await (const chunk of chunks) {
    if (!started && (pending + chunk).split('\n', firstLines + 1).length <= firstLines) {
      pending += chunk
      continue
    }
    started = true
    // So long without a record's end, an unclosed quote is at work: reading on would only swallow more.
    const giveUpFirst = pending.length > longestRecord
    const read = readRecords(pending + chunk, {delimiter, line, moreComes: true, giveUpFirst})
    pending = read.rest
    line = read.nextLine
    if (read.batch.records.length > 0) yield read.batch
  }
  if (pending !== '')
    yield readRecords(pending, {delimiter, line, moreComes: false, giveUpFirst: false}).batch
}

interface Reading {
  readonly delimiter: string
  readonly line: number
  readonly moreComes: boolean
  readonly giveUpFirst: boolean
}

interface Read {
  readonly batch: CsvBatch
  readonly rest: string
  readonly nextLine: number
}

function readRecords(text: string, reading: Reading): Read {
  return text.includes('"') || reading.giveUpFirst ? readQuoted(text, reading) : readPlain(text, reading)
}

/** Without quotation marks a record is a line, which spares all bookkeeping. */
function readPlain(text: string, {delimiter, line, moreComes}: Reading): Read {
  const parser = new Papa.Parser({delimiter, newline: '\n', quoteChar: '"'})
  const {data, meta} = parser.parse(text, 0, moreComes) as ParserResult
  const consumed = moreComes ? meta.cursor : text.length
  const batch = {
    records: data,
    line: (record: number) => line + record,
    raw: () => undefined,
    broken: () => false
  }
  return {batch, rest: text.slice(consumed), nextLine: line + data.length}
}

function readQuoted(start: string, {delimiter, line: firstLine, moreComes, giveUpFirst}: Reading): Read {
  const records: string[][] = []
  const lines: number[] = []
  const raws = new Map<number, string>()
  const broken = new Set<number>()
  let line = firstLine
  let rest = start
  if (giveUpFirst) giveUpLine()
  while (rest !== '') {
    const {consumed, malformed} = readUntilMalformed()
    rest = rest.slice(consumed)
    if (!malformed) break
    giveUpLine()
  }
  const batch = {
    records,
    line: (record: number) => lines[record] ?? firstLine,
    raw: (record: number) => raws.get(record),
    broken: (record: number) => broken.has(record)
  }
  return {batch, rest, nextLine: line}

  function readUntilMalformed(): {consumed: number; malformed: boolean} {
    let consumed = 0
    let malformed = false
    const parser = new Papa.Parser({
      delimiter,
      newline: '\n',
      quoteChar: '"',
      step: (result: unknown) => {
        const {data, errors, meta} = result as ParserResult
        if (errors.some(({type}) => type === 'Quotes')) {
          malformed = true
          parser.abort()
          return
        }
        for (const cells of data) addRecord(cells, rest.slice(consumed, meta.cursor))
        consumed = meta.cursor
      }
    })
    // Errors of an unfinished last record do not count while more is to come: a chunk may end inside quotes.
    parser.parse(rest, 0, moreComes)
    return {consumed: malformed || moreComes ? consumed : rest.length, malformed}
  }

  function addRecord(cells: string[], raw: string): void {
    lines.push(line)
    let plainLength = cells.length - 1
    for (const cell of cells) {
      plainLength += cell.length
      if (cell.includes('\n')) line += cell.split('\n').length - 1
    }
    line += 1
    if (raw.length - plainLength > 1) raws.set(records.length, raw)
    records.push(cells)
  }

  /** Take the physical line of a malformed quote as a record of its own; reading goes on behind it. */
  function giveUpLine(): void {
    const end = rest.indexOf('\n')
    const text = end === -1 ? rest : rest.slice(0, end)
    broken.add(records.length)
    lines.push(line)
    records.push(text.split(delimiter))
    line += 1
    rest = end === -1 ? '' : rest.slice(end + 1)
  }
}
