import type {Finding} from '../model/finding.ts'
import type {Problem} from '../model/study.ts'
import {rules} from '../rules/index.ts'
import type {Rule} from '../rules/rule.ts'

/** What is said about a code, whether a rule stands behind it or the reader itself. */
export type Explained = Pick<Rule, 'code' | 'severity' | 'summary' | 'why' | 'remedy' | 'source' | 'examples'>

/** Reasons why nothing can be said about a folder. No rule can find them: rules need a study that was read. */
const readerReasons: readonly Explained[] = [
  {
    code: 'missing-table',
    severity: 'error',
    summary: 'study.yaml or a table that every study needs is not there, or is empty',
    why: 'Without it there is nothing to report on, so no report is made.',
    remedy: 'add the file, or name yours under `files:` in study.yaml',
    source: "the study folder's own logic",
    examples: []
  },
  {
    code: 'missing-column',
    severity: 'error',
    summary: 'a table lacks a column that it cannot do without',
    why: 'No row of the table can be used without it, so no report is made.',
    remedy: 'rename the header, or name yours under `columns:` in study.yaml',
    source: "the study folder's own logic",
    examples: []
  }
]

/** Every code that a finding can bear, in the order in which a person mends a folder. */
export const explainedCodes: readonly Explained[] = [...readerReasons, ...(rules as readonly Rule[])]

/** Reasons why a folder could not be read, as findings. */
export function unreadableFindings(problems: readonly Problem[]): readonly Finding[] {
  return problems.map(({code, place, message, remedy, cell}) => {
    const explained = explainedCodes.find((known) => known.code === code)
    return {
      code,
      severity: 'error',
      place,
      message,
      // Where the reader gives up, the reason is that: a rule's own reason speaks of a report that is still made.
      why: readerReasons.find((known) => known.code === code)?.why ?? 'Nothing in this folder can be read before it is mended, so no report is made.',
      remedy: remedy ?? explained?.remedy ?? 'mend the file',
      ...(cell !== undefined && {cell})
    }
  })
}
