import type {StudySource} from './model/source.ts'
import type {Problem, UsableStudy} from './model/study.ts'
import {parseStudy} from './parse/parse-study.ts'
import {judgeStudy} from './rules/judge-study.ts'

/** A folder that holds no study that anything could be said about: the reasons, each with its place and remedy. */
export interface Unreadable {
  readonly unreadable: readonly Problem[]
}

/**
 * The first half of the pipeline, study folder to findings: all that `check` does. It is a file of its own so that
 * checking loads none of the heavy parts.
 */
export async function checkStudy(source: StudySource): Promise<UsableStudy | Unreadable> {
  const outcome = await parseStudy(source)
  return 'unreadable' in outcome ? outcome : judgeStudy(outcome.study)
}
