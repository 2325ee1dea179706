import {isDefined} from '../model/quantity.ts'
import {joinWords} from './join-words.ts'
import type {NoteColumns, TableNote} from './note-columns.ts'
import {asSentence, plainText} from './plain-text.ts'
import type {Cell, ReportTable} from './table.ts'

/** Columns without anything to show, and what is said of them instead, once. */
export interface BareColumns {
  readonly indexes: ReadonlySet<number>
  readonly notes: readonly TableNote[]
}

/**
 * A column in which no row has a value tells nothing that one sentence does not tell better. The first column, which
 * names the rows, stays, and so does everything where nothing would be left beside it.
 */
export function bareColumns(table: ReportTable, notes: NoteColumns): BareColumns {
  const reasons = new Map<number, string>()
  for (const index of table.columns.keys()) {
    const isHead = index === 0 || table.columns[index]?.rowHead === true
    const reason = isHead ? undefined : reasonOf(table, index, notes)
    if (reason !== undefined) reasons.set(index, reason)
  }
  const left = table.columns.filter(
    ({asNotes}, index) => index > 0 && asNotes !== true && !reasons.has(index)
  )
  if (left.length === 0) return {indexes: new Set(), notes: []}
  const said = [...new Set(reasons.values())].filter((reason) => reason !== '')
  return {indexes: new Set(reasons.keys()), notes: said.map((reason) => noteOf(table, reasons, reason))}
}

/** Why no row has a value in this column, the same for all; '' where there is nothing to say, undefined where some have one. */
function reasonOf(table: ReportTable, index: number, notes: NoteColumns): string | undefined {
  const all = [...table.rows, ...(table.foot ?? [])]
  if (all.length === 0 || table.columns[index]?.asNotes === true) return undefined
  if (all.some((cells) => notes.beside(cells, index) !== undefined)) return undefined
  const reasons = new Set<string>()
  for (const cells of all) {
    const reason = reasonOfCell(cells[index])
    if (reason === undefined) return undefined
    if (reason !== '') reasons.add(reason)
  }
  const [first = ''] = reasons
  return reasons.size > 1 ? undefined : first
}

function reasonOfCell(cell: Cell | undefined): string | undefined {
  if (cell === undefined || cell.type === 'blank') return ''
  if (cell.type !== 'measure' || isDefined(cell.measure)) return undefined
  return plainText(cell.measure.notDefined)
}

function noteOf({columns}: ReportTable, reasons: ReadonlyMap<number, string>, reason: string): TableNote {
  const heads = columns.flatMap(({head}, index) => (reasons.get(index) === reason ? [plainText(head)] : []))
  const named = joinWords([...new Set(heads)], (words) => words).join('')
  return {text: asSentence(`${named}: not defined, because ${reason}`)}
}
