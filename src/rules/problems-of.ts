import type {ProblemCode, Study} from '../model/study.ts'
import type {Found} from './rule.ts'

/** What the reader could not read, as findings: rows that cannot be used are errors, the rest keep the rule's weight. */
export function* problemsOf(study: Study, code: ProblemCode): Iterable<Found> {
  for (const problem of study.problems) {
    if (problem.code !== code) continue
    const {place, message, remedy, cell, table, row, setsAside} = problem
    yield {
      place,
      message,
      ...(remedy !== undefined && {remedy}),
      ...(cell !== undefined && {cell}),
      ...(setsAside &&
        table !== undefined &&
        row !== undefined && {severity: 'error' as const, setsAside: [{table, row}]})
    }
  }
}
