import {join} from 'node:path'
import {checkStudy, type Unreadable} from '../check-study.ts'
import {DiskTrouble} from '../files/disk-trouble.ts'
import {readAssets} from '../files/read-assets.ts'
import type {StudyFolder} from '../files/read-study-folder.ts'
import {recordReads} from '../files/record-reads.ts'
import {changedInputs, standingReport} from '../files/standing-report.ts'
import {watchReads} from '../files/watch-reads.ts'
import {withProvenance} from '../files/with-provenance.ts'
import type {ArchiveEntry} from '../model/archive-entry.ts'
import type {Results} from '../model/results.ts'
import {seedOf} from '../model/seed-of.ts'
import type {UsableStudy} from '../model/study.ts'
import type {buildReport} from '../pipeline.ts'
import type {Progress} from './terminal/progress.ts'
import {readingProgress} from './terminal/reading-progress.ts'
import {shellWord} from './terminal/shell-word.ts'
import {visible} from './terminal/visible.ts'

/** All that an archive is made from. */
export interface Material {
  readonly usable: UsableStudy
  readonly results: () => Promise<Results>
  readonly report: readonly ArchiveEntry[]
  readonly inputs: readonly string[]
  readonly toolVersion: string
  /** What the user should know of the report. */
  readonly news?: string
}

/** The study with its report: the one that stands in the folder where it is whole and up to date, else a new one. */
export async function materialOf(
  folder: string,
  study: StudyFolder,
  line: Progress,
  make: typeof buildReport
): Promise<Material | Unreadable> {
  const assets = await readAssets()
  const {toolVersion} = assets
  const reportFolder = join(folder, 'report')
  const standing = await standingReport(reportFolder)
  if (standing !== undefined && standing.edits.length > 0) {
    throw new DiskTrouble(
      `${reportFolder} was edited since pitfolio wrote it, so it no longer follows from the records`,
      `move these files away, or make the report anew with \`pitfolio build ${shellWord(folder)} --force\``,
      standing.edits
    )
  }
  const recorded = recordReads(watchReads(study, readingProgress(study, line)))
  const isWhole =
    standing !== undefined &&
    standing.provenance.tool.version === toolVersion &&
    standing.provenance.options.only === undefined &&
    standing.lost.length === 0
  if (isWhole) {
    const usable = await checkStudy(recorded.source)
    if ('unreadable' in usable) return usable
    const inputs = await recorded.inputs()
    const changes = changedInputs(standing.provenance.inputs, inputs)
    if (changes.length === 0) {
      return {...materialFrom(standing.entries), usable, inputs: inputs.map(({path}) => path), toolVersion}
    }
  }
  const report = await make(recorded.source, assets, {onStage: line.stage})
  if ('unreadable' in report) return report
  const inputs = await recorded.inputs()
  const seed = seedOf(report.usable.study.settings)
  const outputs = withProvenance(report.outputs, {toolVersion, seed, inputs})
  const news =
    standing === undefined
      ? `There is no report in ${visible(reportFolder)}: the archive holds one made for it.`
      : `The report in ${visible(reportFolder)} is not that of the records as they are now, or not a whole one: the archive holds a new one. Build again to have it in the folder too.`
  return {
    ...materialFrom([...outputs].map(([path, content]) => ({path, content}))),
    usable: report.usable,
    inputs: inputs.map(({path}) => path),
    toolVersion,
    news
  }
}

function materialFrom(report: readonly ArchiveEntry[]): Pick<Material, 'report' | 'results'> {
  return {report, results: async () => JSON.parse(await textOf(report, 'results.json')) as Results}
}

async function textOf(entries: readonly ArchiveEntry[], wanted: string): Promise<string> {
  const content = entries.find(({path}) => path === wanted)?.content
  if (typeof content !== 'function') return String(content ?? '')
  const chunks: Uint8Array[] = []
  for await (const chunk of content()) chunks.push(chunk)
  return Buffer.concat(chunks).toString('utf8')
}
