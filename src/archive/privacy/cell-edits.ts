import type {TableName} from '../../model/column.ts'
import type {Study} from '../../model/study.ts'
import type {ColumnPlace, Reading} from '../reading.ts'
import {placeholderCell, placeholderNames} from './placeholder-names.ts'
import {positionEdit} from './position-edit.ts'
import type {PrivateMatters} from './private-matters.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/** Changes the cells of one record in place. */
export type CellEdit = (cells: string[]) => void

export type Columns = ReadonlyMap<string, ColumnPlace>

/** How the records of one table, and its header, are changed for a copy that others may see; nothing where they may stay. */
export interface TableEdit {
  readonly header: CellEdit
  readonly record: CellEdit
}

export function tableEdit(
  table: TableName,
  header: readonly string[],
  study: Study,
  privacy: StudyPrivacy,
  matters: PrivateMatters,
  reading: Reading
): TableEdit | undefined {
  const columns = reading.columns(table, header, study.settings)
  const edits: CellEdit[] = []
  if (matters.positions && (table === 'sites' || table === 'traps')) {
    edits.push(positionEdit(table, columns, study.settings, privacy))
  }
  let headerEdit: CellEdit = () => {}
  if (matters.names && (table === 'catch' || table === 'taxa')) {
    const placeholders = placeholderNames(privacy.withheldNames)
    const settle = reading.settle(study.taxa)
    if (table === 'taxa') edits.push(taxonEdit(columns, placeholders, settle))
    else if (columns.has('taxon')) edits.push(catchEdit(columns, placeholders, settle))
    // In a wide table the names stand in the header.
    else headerEdit = renameCells(placeholders, settle)
  }
  if (edits.length === 0 && !(matters.names && table === 'catch')) return undefined
  return {
    header: headerEdit,
    record: (cells) => {
      for (const edit of edits) edit(cells)
    }
  }
}

/** Empties cells whose column means nothing to pitfolio. */
export function blankCells(indexes: readonly number[]): CellEdit {
  return (cells) => {
    for (const index of indexes) if (index < cells.length) cells[index] = ''
  }
}

type Settle = ReturnType<Reading['settle']>

function renameCells(placeholders: ReadonlyMap<string, string>, settle: Settle): CellEdit {
  return (cells) => {
    for (const [index, written] of cells.entries()) {
      const placeholder =
        written.trim() === '' ? undefined : placeholderCell(written, settle(written.trim()), placeholders)
      if (placeholder !== undefined) cells[index] = placeholder
    }
  }
}

function catchEdit(columns: Columns, placeholders: ReadonlyMap<string, string>, settle: Settle): CellEdit {
  const taxon = columns.get('taxon')
  const telling = ['remarks', 'voucher'].flatMap((column) => columns.get(column)?.indexes ?? [])
  return (cells) => {
    const written = taxon?.text(cells) ?? ''
    if (taxon === undefined || written === '') return
    const placeholder = placeholderCell(written, settle(written), placeholders)
    if (placeholder === undefined) return
    renamed(cells, taxon, placeholder)
    blankCells(telling)(cells)
  }
}

/** What tells no name by itself, and other numbers hang on. */
const kept = new Set([
  'class',
  'order',
  'family',
  'rank',
  'guild',
  'body_length_mm',
  'sensitive',
  'taxon',
  'accepted_name'
])

function taxonEdit(columns: Columns, placeholders: ReadonlyMap<string, string>, settle: Settle): CellEdit {
  const [taxon, accepted] = [columns.get('taxon'), columns.get('accepted_name')]
  const telling = [...columns].flatMap(([column, {indexes}]) => (kept.has(column) ? [] : indexes))
  return (cells) => {
    const acceptedName = accepted?.text(cells) ?? ''
    const stand = placeholders.get(acceptedName)
    if (accepted !== undefined && stand !== undefined) renamed(cells, accepted, stand)
    const written = taxon?.text(cells) ?? ''
    const placeholder = placeholders.get(written) ?? placeholderCell(written, settle(written), placeholders)
    if (taxon === undefined || placeholder === undefined) return
    renamed(cells, taxon, placeholder)
    blankCells(telling)(cells)
  }
}

function renamed(cells: string[], {indexes}: ColumnPlace, text: string): void {
  const [first, ...others] = indexes
  if (first === undefined) return
  cells[first] = text
  blankCells(others)(cells)
}
