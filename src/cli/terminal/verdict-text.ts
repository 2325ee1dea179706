import type {FindingsFile} from '../../model/findings-file.ts'
import {listWords} from '../../model/list-words.ts'
import {counted, grouped} from './number-words.ts'

type Verdict = FindingsFile['verdict']

/** `2 errors, 1 caution and 3 notes`, without the kinds of which there are none. */
export function findingsInWords({errors, cautions, notes}: Verdict): string {
  const kinds = [
    [errors, 'error'],
    [cautions, 'caution'],
    [notes, 'note']
  ] as const
  const parts = kinds.filter(([count]) => count > 0).map(([count, word]) => counted(count, word))
  return parts.length === 0 ? 'no findings' : listWords(parts)
}

/** `3 of 3,706 rows set aside`, or that all are used. */
export function rowsInWords({rowsRead, rowsSetAside}: Verdict): string {
  if (rowsSetAside === 0)
    return rowsRead === 1 ? 'the one row is used' : `all ${grouped(rowsRead)} rows are used`
  return `${grouped(rowsSetAside)} of ${counted(rowsRead, 'row')} set aside`
}
