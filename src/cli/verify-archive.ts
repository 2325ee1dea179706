import {type BagProblem, isListed, judgeBag} from '../archive-study.ts'
import type {Unreadable} from '../check-study.ts'
import {digestOf} from '../files/digest.ts'
import {limitReads} from '../files/limit-reads.ts'
import {openArchive} from '../files/open-archive.ts'
import {DamagedMember, type OpenArchive} from '../files/open-zip.ts'
import {readAssets} from '../files/read-assets.ts'
import {readWhole} from '../files/read-whole.ts'
import {type ArchiveFile, archiveFileName, archiveFileSchema} from '../model/archive-file.ts'
import type {FileDigest} from '../model/file-digest.ts'
import {partOfSource} from '../model/part-of-source.ts'
import {provenanceSchema} from '../model/provenance.ts'
import type {buildReport} from '../pipeline.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {type Recomputed, recomputed} from './recomputed.ts'
import {counted, grouped} from './terminal/number-words.ts'
import {type Progress, progress} from './terminal/progress.ts'
import type {Terminal} from './terminal/terminal.ts'
import {
  accountText,
  comparisonLines,
  documentsSection,
  numbersSame,
  type Section
} from './terminal/verify-text.ts'
import {unreadableFindings} from './unreadable-findings.ts'

/** Whether an archive is whole, and whether its numbers follow from its records. */
export async function verifyArchive(
  path: string,
  quiet: boolean,
  {out, err}: Terminal,
  make: typeof buildReport
): Promise<ExitCode> {
  const line = progress(err, quiet)
  const archive = await openArchive(path)
  try {
    const {digests, unreadable} = await digestsOf(archive, line)
    const problems = judgeBag({digests, unreadable, tags: await tagsOf(archive, unreadable)})
    const assets = await readAssets()
    const sections: Section[] = [filesSection(archive, problems)]
    let made: string | undefined
    let again: Recomputed | Unreadable | string
    try {
      const stated = archiveFileSchema.parse(await jsonOf(archive, `data/${archiveFileName}`))
      made = stated.tool.version
      again = await computedAgain(archive, stated, assets, line, make)
      if (typeof again !== 'string' && !('unreadable' in again)) {
        sections.push(...recomputedSections(again, stated))
        if (stated.raw === 'exact' && stated.heldBack.length > 0)
          sections.push({
            title: 'held back',
            ok: true,
            lines: ['This archive holds the original files and is not for publication.']
          })
      } else sections.push(failedSection(again))
    } catch (error) {
      if (
        error instanceof DamagedMember ||
        error instanceof SyntaxError ||
        (error as Error).name === 'ZodError'
      )
        sections.push(
          failedSection(
            `a file that is needed for it is damaged (${(error as Error).message.split('\n')[0]})`
          )
        )
      else throw error
    }
    line.clear()
    const isSound = sections.every(({ok}) => ok)
    if (!(quiet && isSound)) {
      const maker = made === undefined ? '' : ` made with pitfolio ${made},`
      out.write(
        accountText(
          out,
          `The archive ${archive.top},${maker} checked with ${assets.toolVersion}`,
          sections,
          verdictOf(sections)
        )
      )
    }
    return isSound ? exitCode.clean : exitCode.errorsFound
  } finally {
    await archive.close()
  }
}

function verdictOf(sections: readonly Section[]): string {
  const isSound = (title: string): boolean =>
    sections.filter((section) => section.title === title).every(({ok}) => ok)
  if (sections.every(({ok}) => ok)) return 'The archive is whole, and its numbers follow from its records.'
  if (isSound('files')) return 'The archive is whole, but what is in it does not follow from its records.'
  return isSound('numbers') && isSound('documents')
    ? 'The archive is not as it was made, though its numbers follow from its records.'
    : 'The archive is not as it was made, and its numbers do not follow from its records.'
}

async function digestsOf(
  archive: OpenArchive,
  line: Progress
): Promise<{digests: readonly FileDigest[]; unreadable: ReadonlyMap<string, string>}> {
  const digests: FileDigest[] = []
  const unreadable = new Map<string, string>()
  for (const path of archive.files.keys()) {
    line.say(`checksum of ${path}`)
    try {
      digests.push(await digestOf(path, archive.read(path)))
    } catch (error) {
      if (!(error instanceof DamagedMember)) throw error
      unreadable.set(path, error.message)
    }
  }
  return {digests, unreadable}
}

/** The text of the files beside data/. */
async function tagsOf(
  archive: OpenArchive,
  unreadable: ReadonlyMap<string, string>
): Promise<ReadonlyMap<string, string>> {
  const tags = new Map<string, string>()
  for (const path of archive.files.keys()) {
    const isTag = /^(bagit|bag-info|(tag)?manifest-sha\d+)\.txt$/.test(path)
    // Byte for byte: a sign that is no UTF-8 must not be taken for another.
    if (isTag && !unreadable.has(path)) tags.set(path, utf8(await readWhole(archive, path)))
  }
  return tags
}

function utf8(bytes: Buffer): string {
  const text = bytes.toString('utf8')
  return Buffer.from(text, 'utf8').equals(bytes) ? text : bytes.toString('latin1')
}

async function jsonOf(archive: OpenArchive, path: string): Promise<unknown> {
  if (!archive.files.has(path)) throw new DamagedMember(`${path} is missing`)
  return JSON.parse((await readWhole(archive, path)).toString('utf8'))
}

async function computedAgain(
  archive: OpenArchive,
  stated: ArchiveFile,
  assets: Awaited<ReturnType<typeof readAssets>>,
  line: Progress,
  make: typeof buildReport
): Promise<Recomputed | Unreadable | string> {
  const [raw, report] = ['data/raw/', 'data/report/'].map((folder) => partOfSource(archive, folder))
  if (!report!.files.has('results.json')) return 'report/results.json is missing'
  const provenance = provenanceSchema.parse(await jsonOf(archive, 'data/report/provenance.json'))
  const notMade =
    stated.tool.version !== assets.toolVersion
      ? `documents are compared only by the version that made them, pitfolio ${stated.tool.version}`
      : stated.raw === 'generalised'
        ? 'the documents were made from the original files, of which the archive holds a copy that keeps some things back'
        : undefined
  return recomputed(limitReads(raw!), report!, provenance, assets, notMade, line.stage, make)
}

function filesSection({files}: OpenArchive, problems: readonly BagProblem[]): Section {
  const count = counted(files.size, 'file')
  return problems.length === 0
    ? {title: 'files', ok: true, lines: [`${count}, all as their checksums say.`]}
    : {
        title: 'files',
        ok: false,
        lines: [
          `${grouped(problems.length)} of ${count} not as when the archive was made:`,
          ...problems.map(({file, message}) => `- ${file} ${message}`)
        ]
      }
}

function recomputedSections(
  {comparison, documents}: Recomputed,
  {notRecomputable}: ArchiveFile
): readonly Section[] {
  const held = comparison.differences.filter(({pointer}) => isListed(pointer, notRecomputable))
  const moved = comparison.differences.filter((difference) => !held.includes(difference))
  const numbers: Section =
    moved.length === 0
      ? {title: 'numbers', ok: true, lines: [numbersSame(comparison.numbers)]}
      : {
          title: 'numbers',
          ok: false,
          lines: [
            `${counted(moved.length, 'value')} of report/results.json do not come out again:`,
            ...comparisonLines(moved, 'in the archive')
          ]
        }
  const cannot: Section = {
    title: 'held back',
    ok: true,
    lines: [
      `${counted(held.length, 'value')} cannot be computed again from the copy of the raw files, because of what is held back:`,
      ...comparisonLines(held, 'in the report', Number.POSITIVE_INFINITY)
    ]
  }
  return [numbers, ...(held.length === 0 ? [] : [cannot]), documentsSection(documents)]
}

function failedSection(reason: string | Unreadable): Section {
  const lines =
    typeof reason === 'string'
      ? [`Nothing could be computed again: ${reason}.`]
      : [
          'Nothing could be computed again, because the raw files cannot be read:',
          ...unreadableFindings(reason.unreadable).map(({place, message}) => `- ${place.file}: ${message}`)
        ]
  return {title: 'numbers', ok: false, lines}
}
