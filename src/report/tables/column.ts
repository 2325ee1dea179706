import type {TableColumn} from '../table.ts'

/** A column of words. */
export function wordColumn(head: string): TableColumn {
  return {head, align: 'left'}
}

/** Words about the column before that most rows share: said once below the table. */
export function noteColumn(head: string): TableColumn {
  return {head, align: 'left', asNotes: true}
}

/** A column of numbers, aligned on the right, with its unit in the head. */
export function numberColumn(head: string, unit?: string): TableColumn {
  return unit === undefined ? {head, align: 'right'} : {head, unit, align: 'right'}
}
