import type {Finding} from './model/finding.ts'
import type {Outputs, StudySource} from './model/source.ts'
import type {Problem, UsableStudy} from './model/study.ts'
import {parseStudy} from './parse/parse-study.ts'
import {judgeStudy} from './rules/judge-study.ts'

/** A folder that holds no study that anything could be said about: the reasons, each with its place and remedy. */
export interface Unreadable {
  readonly unreadable: readonly Problem[]
}

/** Text of everything in templates/ by its name there, and of the package itself what a report must name. */
export interface Assets {
  readonly templates: ReadonlyMap<string, string>
  readonly toolVersion: string
}

export interface BuildOptions {
  /** Names of the documents to make; all where absent. */
  readonly only?: readonly string[]
  /** Called before each stage, for progress on the terminal. */
  readonly onStage?: (stage: string) => void
}

export interface Report {
  readonly usable: UsableStudy
  /** Findings about the author's own texts and templates, found while the documents were put together. */
  readonly textFindings: readonly Finding[]
  readonly outputs: Outputs
}

/** Study folder to findings: all that `check` does. */
export async function checkStudy(source: StudySource): Promise<UsableStudy | Unreadable> {
  const outcome = await parseStudy(source)
  return 'unreadable' in outcome ? outcome : judgeStudy(outcome.study)
}

/**
 *   StudySource --parse--> Study --rules--> Findings --+
 *                            |                         |
 *                            +----> results ----> Results --> charts, report --> formats --> Outputs
 */
export async function buildReport(source: StudySource, _assets: Assets, _options: BuildOptions = {}): Promise<Report | Unreadable> {
  const usable = await checkStudy(source)
  if ('unreadable' in usable) return usable
  return {usable, textFindings: [], outputs: new Map()}
}
