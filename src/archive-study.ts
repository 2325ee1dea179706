import {archiveStages} from './archive/archive-contents.ts'
import {below} from './archive/below.ts'
import {compareResults} from './archive/compare-results.ts'
import {darwinCoreArchive} from './archive/darwin-core-archive.ts'
import {datasetOf} from './archive/dataset.ts'
import {describeTables} from './archive/describe-tables.ts'
import {entrySource} from './archive/entry-source.ts'
import {findLeaks, type Leak} from './archive/privacy/find-leaks.ts'
import {generalisedCopy} from './archive/privacy/generalised-copy.ts'
import {type KindInText, kindsInTexts} from './archive/privacy/kinds-in-texts.ts'
import {hasPrivateMatters, privateMatters} from './archive/privacy/private-matters.ts'
import {studyPrivacy} from './archive/privacy/study-privacy.ts'
import {hangsOnPositionsAlone, withoutCatch} from './archive/privacy/without-catch.ts'
import type {Reading} from './archive/reading.ts'
import type {Unreadable} from './check-study.ts'
import type {ArchiveEntry, ArchiveStage} from './model/archive-entry.ts'
import type {ArchiveFile} from './model/archive-file.ts'
import type {TableName} from './model/column.ts'
import {tables as tableDescriptions} from './model/columns.ts'
import type {FileDigest} from './model/file-digest.ts'
import type {Results} from './model/results.ts'
import type {Settings} from './model/settings.ts'
import type {StudySource} from './model/source.ts'
import type {UsableStudy} from './model/study.ts'
import {csvRows} from './parse/csv-rows.ts'
import {decodeText, type Encoding} from './parse/decode-text.ts'
import {readBytes} from './parse/read-bytes.ts'
import {readText} from './parse/read-text.ts'
import {cellText, resolveColumns} from './parse/resolve-columns.ts'
import {nameSettler} from './parse/settle-names.ts'
import {wideResolution} from './parse/wide-header.ts'

export {
  type Comparison,
  compareResults,
  type Difference,
  isListed,
  tolerance,
  wholeEntry
} from './archive/compare-results.ts'
export {type BagProblem, judgeBag} from './archive/judge-bag.ts'

export interface ArchiveRequest {
  readonly source: StudySource
  readonly usable: UsableStudy
  /** results.json of the report; asked for when needed, because it may be large. */
  readonly results: () => Promise<Results>
  /** The files of the report, by their paths in it. */
  readonly report: readonly ArchiveEntry[]
  /** Paths of the files that the report was made from. */
  readonly inputs: readonly string[]
  /** Every file of the study, in the order of paths. */
  readonly originals: readonly FileDigest[]
  readonly toolVersion: string
  /** Hexadecimal digits that stand for the content of the study. */
  readonly fingerprint: string
  /** Whether the original files go in although they hold private matters. */
  readonly exact: boolean
  /** Study folder to results: what tells which numbers a copy can give. */
  readonly recompute: (source: StudySource) => Promise<Results | Unreadable>
  /** A picture without what a camera writes beside it. */
  readonly pictureForOthers: Reading['pictureForOthers']
  readonly onStage?: (stage: string) => void
}

export interface PlannedArchive {
  /** Name of the folder in the archive, and of the archive itself. */
  readonly name: string
  readonly archive: ArchiveFile
  readonly stages: readonly ArchiveStage[]
  readonly hasTarget: boolean
  /** Files that would give away what is held back: with any of them nothing may be written. */
  readonly leaks: readonly Leak[]
  /** Texts of the authors that name a sensitive kind, for a person to look at. */
  readonly kindsInTexts: readonly KindInText[]
}

/**
 *   study, results, report --> Darwin Core archive, EML --+
 *        |                                                |
 *        +--> files as they are, or a copy without        +--> Data Package --> RO-Crate --> bag
 *             private matters --> what it can recompute --+
 */
export async function archiveStudy(request: ArchiveRequest): Promise<PlannedArchive | Unreadable> {
  const {source, usable, report, inputs, originals, toolVersion, fingerprint, exact} = request
  const {study} = usable
  const stage = request.onStage ?? (() => undefined)
  stage('Looking for what is private')
  const privacy = studyPrivacy(study)
  const reading: Reading = {...readerWays, pictureForOthers: request.pictureForOthers}
  const paths = originals.map(({path}) => path)
  const matters = await privateMatters(source, paths, study, privacy, reading)
  const isCopy = hasPrivateMatters(matters) && !exact
  const raw = isCopy
    ? generalisedCopy(source, inputs, study, privacy, matters, reading)
    : originals.map(({path}): ArchiveEntry => ({path, content: () => source.read(path)}))
  let notRecomputable: readonly string[] = []
  if (isCopy) {
    stage('Computing from the copy')
    const catchTable = study.tables.catch
    const isProbed = catchTable !== undefined && hangsOnPositionsAlone(study, privacy, matters)
    const probe = (of: StudySource): StudySource => (isProbed ? withoutCatch(of, catchTable, reading) : of)
    const before = isProbed ? await request.recompute(probe(source)) : await request.results()
    const after = await request.recompute(probe(entrySource(raw)))
    if ('unreadable' in before) return before
    if ('unreadable' in after) return after
    const {differences} = compareResults(plain(before), plain(after))
    notRecomputable = differences.map(({pointer}) => pointer)
  }
  const dataset = datasetOf(await request.results(), toolVersion, fingerprint)
  const archive: ArchiveFile = {
    format: 'pitfolio-archive',
    formatVersion: 1,
    tool: {name: 'pitfolio', version: toolVersion},
    raw: isCopy ? 'generalised' : 'exact',
    originals,
    heldBack: matters.said,
    leftOut: isCopy ? leftOut(originals, inputs) : [],
    notRecomputable
  }
  const darwinCore = darwinCoreArchive(study, privacy, dataset)
  const sources = Object.values(study.tables)
  stage('Describing the tables')
  const inPlace = [...below('raw/', raw), ...below('report/', report)]
  const tables = await describeTables(entrySource(inPlace), sources, reading)
  // The originals are meant to hold it.
  const names = {path: 'names of files', content: paths.join('\n')}
  const toSearch = [...(isCopy ? inPlace : below('report/', report)), ...darwinCore.entries, names]
  if (hasPrivateMatters(matters)) stage('Looking for what would give it away')
  const placeTables = sources.filter(({name}) => name !== 'taxa').map(({file}) => `raw/${file}`)
  const leaks = hasPrivateMatters(matters) ? await findLeaks(toSearch, matters, placeTables) : []
  const parts = {dataset, settings: study.settings, archive, raw, report, darwinCore, tables, sources, inputs}
  return {
    name: dataset.id,
    archive,
    stages: archiveStages(parts),
    hasTarget: darwinCore.hasTarget,
    leaks,
    kindsInTexts: await kindsInTexts(raw, matters.kinds)
  }
}

/** As results.json has it. */
function plain(results: Results): unknown {
  return JSON.parse(JSON.stringify(results))
}

function leftOut(originals: readonly FileDigest[], inputs: readonly string[]): ArchiveFile['leftOut'] {
  const read = new Set(inputs)
  return originals
    .filter(({path}) => !read.has(path))
    .map(({path}) => ({path, reason: 'pitfolio does not read it and cannot tell what it gives away'}))
}

/** The reader's own ways with files, for the archive. */
const readerWays: Omit<Reading, 'pictureForOthers'> = {
  records: (source, file, encoding, delimiter) =>
    csvRows(decodeText(source.read(file), encoding as Encoding), delimiter),
  chunks: (source, file, encoding) => decodeText(source.read(file), encoding as Encoding),
  columns: columnPlaces,
  settle: nameSettler,
  text: readText,
  bytes: readBytes
}

function columnPlaces(
  name: TableName,
  header: readonly string[],
  settings: Settings
): ReturnType<Reading['columns']> {
  const map = settings.columns?.[name] ?? {}
  const long = resolveColumns(tableDescriptions[name], header, map)
  const wide =
    name === 'catch' && long.missing.length > 0
      ? wideResolution(tableDescriptions.catch, header, map, settings.catch?.shape)
      : undefined
  const {resolved} = wide ?? long
  return new Map(
    resolved.map(({column, source}) => {
      const words = settings.words?.[column.name] ?? {}
      const indexes =
        source.kind === 'constant' ? [] : source.kind === 'cell' ? [source.index] : source.indexes
      const text = (cells: readonly string[]): string => {
        const written = cellText(source, cells)
        return Object.hasOwn(words, written) ? `${words[written]}`.trim() : written
      }
      return [column.name, {indexes, text}] as const
    })
  )
}
