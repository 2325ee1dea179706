import {judgeBag} from '../archive-study.ts'
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
import {type Provenance, provenanceSchema} from '../model/provenance.ts'
import type {buildReport} from '../pipeline.ts'
import {
  archiveVerdict,
  failedSection,
  filesSection,
  originSection,
  recomputedSections
} from './archive-account.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {type Recomputed, recomputed} from './recomputed.ts'
import {type Progress, progress} from './terminal/progress.ts'
import type {Terminal} from './terminal/terminal.ts'
import {accountText, type Section} from './terminal/verify-text.ts'

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
    const {made, checkedWith, sections} = await accountOf(archive, line, make)
    line.clear()
    const isSound = sections.every(({ok}) => ok)
    if (!(quiet && isSound)) {
      const maker = made === undefined ? '' : ` made with pitfolio ${made},`
      const heading = `The archive ${archive.top},${maker} checked with ${checkedWith}`
      out.write(accountText(out, heading, sections, archiveVerdict(sections)))
    }
    return isSound ? exitCode.clean : exitCode.errorsFound
  } finally {
    await archive.close()
  }
}

interface Account {
  /** Version of pitfolio that made the archive, where that can be read. */
  readonly made?: string
  readonly checkedWith: string
  readonly sections: readonly Section[]
}

async function accountOf(archive: OpenArchive, line: Progress, make: typeof buildReport): Promise<Account> {
  const {digests, unreadable} = await digestsOf(archive, line)
  const problems = judgeBag({digests, unreadable, tags: await tagsOf(archive, unreadable)})
  const assets = await readAssets()
  const files = filesSection(archive, problems)
  const checkedWith = assets.toolVersion
  let made: string | undefined
  try {
    const stated = archiveFileSchema.parse(await jsonOf(archive, `data/${archiveFileName}`))
    made = stated.tool.version
    const provenance = provenanceSchema.parse(await jsonOf(archive, 'data/report/provenance.json'))
    const origin = originSection(stated, provenance, digests)
    const again = await computedAgain(archive, stated, provenance, assets, line, make)
    return {made, checkedWith, sections: [files, origin, ...recomputedSections(again, stated)]}
  } catch (error) {
    const isDamage = error instanceof DamagedMember || error instanceof SyntaxError
    if (!isDamage && (error as Error).name !== 'ZodError') throw error
    const reason = `a file that is needed for it is damaged (${(error as Error).message.split('\n')[0]})`
    return {...(made !== undefined && {made}), checkedWith, sections: [files, failedSection(reason)]}
  }
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
  provenance: Provenance,
  assets: Awaited<ReturnType<typeof readAssets>>,
  line: Progress,
  make: typeof buildReport
): Promise<Recomputed | Unreadable> {
  const raw = partOfSource(archive, 'data/raw/')
  const report = partOfSource(archive, 'data/report/')
  if (!report.files.has('results.json')) throw new DamagedMember('data/report/results.json is missing')
  const notMade =
    stated.tool.version !== assets.toolVersion
      ? `documents are compared only by the version that made them, pitfolio ${stated.tool.version}`
      : stated.raw === 'generalised'
        ? 'the documents were made from the original files, of which the archive holds a copy that keeps some things back'
        : undefined
  return recomputed(limitReads(raw), report, provenance, assets, notMade, line.stage, make)
}
