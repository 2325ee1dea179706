import type {RowReference, Severity} from '../model/finding.ts'
import type {Place} from '../model/place.ts'
import type {Study} from '../model/study.ts'
import type {StudyIndex} from './study-index.ts'

/** One thing that can be wrong with a study, and everything that is said about it: page, example and test in one. */
export interface Rule {
  /** Kebab-case, named after the defect; the file has the same name. */
  readonly code: string
  readonly severity: Severity
  /** A study cannot judge this rule otherwise: without it rows would hang in the air, and no number could be made of them. */
  readonly settled?: true
  /** One line for lists of findings. */
  readonly summary: string
  /** What goes wrong in the report when this is ignored. */
  readonly why: string
  /** What to do about it: an instruction. */
  readonly remedy: string
  /** Where the rule comes from: a published source, or 'common practice, no source', or the study folder's own logic. */
  readonly source: string
  /** Files laid over a valid study (rules/base-study.ts), and the findings of this rule that they must give. */
  readonly examples: readonly Example[]
  check(study: Study, index: StudyIndex): Iterable<Found>
}

export interface Example {
  readonly files: Readonly<Record<string, string>>
  /** Files of the valid study that are not there. */
  readonly without?: readonly string[]
  readonly findings: readonly string[]
}

/** Where and what; code, severity and reasons are stamped on by the driver. */
export interface Found {
  readonly place: Place
  readonly message: string
  /** A remedy for this very case, where there is a better one than the rule's. */
  readonly remedy?: string
  readonly cell?: string
  readonly related?: readonly {readonly place: Place; readonly message: string}[]
  readonly setsAside?: readonly RowReference[]
  /** For rules whose weight depends on the case. */
  readonly severity?: Severity
}
