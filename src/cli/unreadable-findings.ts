import type {Finding} from '../model/finding.ts'
import type {Problem} from '../model/study.ts'
import {explainedCodes, readerReasons} from './explained-codes.ts'

// A rule's own reason speaks of a report that is made all the same; here the reader had to give up.
const usualWhy = 'Nothing in this folder can be read before it is mended, so no report is made.'

/** Reasons why a folder could not be read, as findings. */
export function unreadableFindings(problems: readonly Problem[]): readonly Finding[] {
  return problems.map(({code, place, message, remedy, cell}) => ({
    code,
    severity: 'error',
    place,
    message,
    why: readerReasons.find((known) => known.code === code)?.why ?? usualWhy,
    remedy: remedy ?? explainedCodes.find((known) => known.code === code)?.remedy ?? 'mend the file',
    ...(cell !== undefined && {cell})
  }))
}
