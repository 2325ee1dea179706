import {createHash} from 'node:crypto'
import {join} from 'node:path'
import {archiveStudy, type PlannedArchive} from '../archive-study.ts'
import {isArchiveOfOurs} from '../files/archive-mark.ts'
import {refuseTarget, writeArchive} from '../files/archive-target.ts'
import {digestOf} from '../files/digest.ts'
import {DiskTrouble} from '../files/disk-trouble.ts'
import {readStudyFolder, type StudyFolder} from '../files/read-study-folder.ts'
import type {WrittenZip} from '../files/write-zip.ts'
import type {FileDigest} from '../model/file-digest.ts'
import {buildReport, pictureForOthers, studyResults} from '../pipeline.ts'
import {materialOf} from './archive-material.ts'
import {tellUnreadable} from './check.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {tellSkipped} from './tell-skipped.ts'
import {archivedText, wrapped} from './terminal/archived-text.ts'
import {progress} from './terminal/progress.ts'
import type {Terminal} from './terminal/terminal.ts'
import {troubleText} from './terminal/trouble-text.ts'
import {visible} from './terminal/visible.ts'

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
  const originals = await originalsOf(study)
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
    pictureForOthers,
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

/** Every file of the study but archives of it that were made before. */
async function originalsOf(study: StudyFolder): Promise<readonly FileDigest[]> {
  const digests: FileDigest[] = []
  for (const path of study.files.keys()) {
    const full = join(study.root, path)
    if (!/\.(csv|md|ya?ml)$/i.test(path) && (await isArchiveOfOurs(full))) continue
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
      'take it out of these files and build again (a picture: save it anew without its place); or, for an archive that is not for others, use --exact',
    files: leaks.map(({file, what}) => `${file}: ${what}`)
  }
}
