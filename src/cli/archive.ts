import {createHash} from 'node:crypto'
import {join} from 'node:path'
import {archiveStudy, type PlannedArchive} from '../archive-study.ts'
import {checkStudy, type Unreadable} from '../check-study.ts'
import {isArchiveOfOurs} from '../files/archive-mark.ts'
import {refuseTarget, writeArchive} from '../files/archive-target.ts'
import {digestOf} from '../files/digest.ts'
import {DiskTrouble} from '../files/disk-trouble.ts'
import {readAssets} from '../files/read-assets.ts'
import {readStudyFolder, type StudyFolder} from '../files/read-study-folder.ts'
import {recordReads} from '../files/record-reads.ts'
import {changedInputs, standingReport} from '../files/standing-report.ts'
import {watchReads} from '../files/watch-reads.ts'
import {withProvenance} from '../files/with-provenance.ts'
import type {WrittenZip} from '../files/write-zip.ts'
import type {ArchiveEntry} from '../model/archive-entry.ts'
import type {FileDigest} from '../model/file-digest.ts'
import type {Results} from '../model/results.ts'
import type {UsableStudy} from '../model/study.ts'
import {buildReport, studyResults} from '../pipeline.ts'
import {tellUnreadable} from './check.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {tellSkipped} from './tell-skipped.ts'
import {counted} from './terminal/number-words.ts'
import {type Progress, progress} from './terminal/progress.ts'
import {readingProgress} from './terminal/reading-progress.ts'
import {shellWord} from './terminal/shell-word.ts'
import type {Channel, Terminal} from './terminal/terminal.ts'
import {troubleText} from './terminal/trouble-text.ts'
import {visible} from './terminal/visible.ts'
import {wrapText} from './terminal/wrap-text.ts'

export interface ArchiveOptions {
  readonly out?: string
  readonly exact?: boolean
  readonly quiet?: boolean
}

/** `pitfolio archive DIR`: one zip with the raw records, the report and their description in open standards. */
export async function archive(
  folder: string,
  options: ArchiveOptions,
  terminal: Terminal,
  make: typeof buildReport = buildReport
): Promise<ExitCode> {
  const {exact = false, quiet = false} = options
  const {out, err} = terminal
  const study = await readStudyFolder(folder)
  tellSkipped(err, study)
  if (options.out !== undefined) await refuseTarget(study, options.out)
  const line = progress(err, quiet)
  const material = await materialOf(folder, study, line, make)
  if ('unreadable' in material) {
    line.clear()
    return tellUnreadable(folder, material, false, terminal)
  }
  const {usable, results, report, inputs, toolVersion, news} = material
  line.stage('Checksums of the raw files')
  const originals = await originalsOf(study, options.out)
  const planned = await archiveStudy({
    source: study,
    usable,
    results,
    report,
    inputs,
    originals,
    toolVersion,
    fingerprint: fingerprintOf(originals),
    exact,
    recompute: studyResults,
    onStage: line.stage
  })
  if ('unreadable' in planned) throw new Error('the generalised copy cannot be read back')
  if (planned.leaks.length > 0) {
    line.clear()
    err.write(troubleText(err, leakTrouble(planned)))
    return exitCode.couldNotRun
  }
  const shown = options.out ?? join(folder, `${planned.name}.zip`)
  const check = (written: WrittenZip): void => refuseChanged(planned, originals, written)
  const written = await writeArchive(study, shown, planned.name, planned.stages, check, (path) =>
    line.say(`packing ${path}`)
  )
  line.clear()
  if (!quiet) {
    if (news !== undefined) err.write(wrapped(err, news))
    out.write(archivedText(out, shown, planned, written))
  }
  return exitCode.clean
}

interface Material {
  readonly usable: UsableStudy
  readonly results: () => Promise<Results>
  readonly report: readonly ArchiveEntry[]
  readonly inputs: readonly string[]
  readonly toolVersion: string
  /** What the user should know of the report. */
  readonly news?: string
}

/** The study with its report: the one that stands in the folder where it is whole and up to date, else a new one. */
async function materialOf(
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
  const seed = report.usable.study.settings.analysis?.seed ?? 1
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

/** Every file of the study but archives of it that were made before. */
async function originalsOf(study: StudyFolder, out: string | undefined): Promise<readonly FileDigest[]> {
  const digests: FileDigest[] = []
  for (const path of study.files.keys()) {
    const full = join(study.root, path)
    if (/\.zip$/i.test(path) || full === out) if (await isArchiveOfOurs(full)) continue
    if (/[\u0000-\u001f\u007f\\]|(^|\/) *(\/|$)/.test(path))
      throw new DiskTrouble(`the file name ${visible(path)} cannot stand in an archive`, 'rename the file')
    digests.push(await digestOf(path, study.read(path)))
  }
  return digests
}

function fingerprintOf(originals: readonly FileDigest[]): string {
  const hash = createHash('sha256')
  for (const {path, sha512} of originals) hash.update(`${sha512}  ${path}\n`)
  return hash.digest('hex')
}

/** A raw file that is not what it was a moment ago would stand beside a report that was not made of it. */
function refuseChanged(
  {archive: {raw}}: PlannedArchive,
  originals: readonly FileDigest[],
  {files}: WrittenZip
): void {
  if (raw !== 'exact') return
  const written = new Map(files.map((file) => [file.path, file]))
  const changed = originals.filter(({path, sha512}) => written.get(`data/raw/${path}`)?.sha512 !== sha512)
  if (changed.length === 0) return
  throw new DiskTrouble(
    'files of the study changed while they were being archived; nothing was written',
    'save them, wait until they are written, and run again',
    changed.map(({path}) => path)
  )
}

function leakTrouble({leaks}: PlannedArchive): {message: string; remedy: string; files: readonly string[]} {
  return {
    message: 'some files would give away what is held back everywhere else; nothing was written',
    remedy:
      'take it out of your texts and of study.yaml and build again; or, for an archive that is not for others, use --exact',
    files: leaks.map(({file, what}) => `${file}: ${what}`)
  }
}

function archivedText(channel: Channel, shown: string, planned: PlannedArchive, written: WrittenZip): string {
  const {archive: made, hasTarget} = planned
  const {paint} = channel
  const size = `${Math.max(1, Math.round(written.zip.bytes / 1000))
    .toString()
    .replace(/\B(?=(\d{3})+$)/g, ',')} kB`
  const notes = [
    ...(made.raw === 'generalised'
      ? ['Its raw files are a copy that others may see; --exact puts the originals in.', ...made.heldBack]
      : made.heldBack.length > 0
        ? [
            'It holds the original files and is not for publication. Everything outside raw/ is generalised:',
            ...made.heldBack
          ]
        : []),
    ...(made.leftOut.length > 0
      ? [`Left out, because pitfolio does not read them: ${made.leftOut.map(({path}) => path).join(', ')}.`]
      : []),
    ...(made.notRecomputable.length > 0
      ? [
          `${counted(made.notRecomputable.length, 'value')} of the report cannot be computed again from the copy; archive.json names them.`
        ]
      : []),
    ...(hasTarget
      ? []
      : [
          'study.yaml names no target groups, so the archive says nothing about what was looked for and not found (Humboldt Extension).'
        ])
  ]
  return [
    `The archive stands in ${paint('bold', visible(shown))}: ${counted(written.files.length, 'file')}, ${size}.\n`,
    `SHA-256 ${written.zip.sha256}\n`,
    ...notes.map((note) => wrapped(channel, note)),
    `Check it: pitfolio verify ${shellWord(shown)}\n`
  ].join('')
}

function wrapped({width}: Channel, text: string): string {
  return `${wrapText(visible(text), width).join('\n')}\n`
}
