import type {ArchiveEntry, ArchiveStage} from '../model/archive-entry.ts'
import {type ArchiveFile, archiveFileName} from '../model/archive-file.ts'
import type {FileDigest} from '../model/file-digest.ts'
import type {Settings} from '../model/settings.ts'
import type {SourceTable} from '../model/study.ts'
import {codeUnitOrder} from '../results/code-unit-order.ts'
import {type BagInfo, bagStages, payloadFolder} from './bag.ts'
import {below} from './below.ts'
import {citationCff} from './citation-cff.ts'
import type {DarwinCoreArchive} from './darwin-core-archive.ts'
import {type DescribedTable, dataPackage} from './data-package.ts'
import type {Dataset} from './dataset.ts'
import {fileTitle} from './file-kinds.ts'
import {readme} from './readme.ts'
import {crateFile, roCrate} from './ro-crate.ts'

export interface ArchiveParts {
  readonly dataset: Dataset
  readonly settings: Settings
  readonly archive: ArchiveFile
  /** Files of the study, or of its copy. */
  readonly raw: readonly ArchiveEntry[]
  readonly report: readonly ArchiveEntry[]
  readonly darwinCore: DarwinCoreArchive
  readonly tables: readonly DescribedTable[]
  readonly sources: readonly SourceTable[]
  /** Paths of the files of the study that the report was made from. */
  readonly inputs: readonly string[]
}

/**
 * Everything in an archive, in the order in which it must be made: what describes other files comes after them, so
 * that every size and checksum is that of the bytes that are there.
 */
export function archiveStages(parts: ArchiveParts): readonly ArchiveStage[] {
  const {dataset, settings, archive, darwinCore, tables, sources} = parts
  const described = [
    ...below('report/', parts.report),
    ...darwinCore.entries,
    {path: archiveFileName, content: `${JSON.stringify(archive, null, 2)}\n`},
    {path: 'CITATION.cff', content: citationCff(dataset)},
    {path: 'README.md', content: readme(dataset, archive, darwinCore.hasTarget)}
  ].sort((a, b) => codeUnitOrder(a.path, b.path))
  // Raw files first: large ones are packed on another thread while tables are still being written.
  const content = [...below('raw/', parts.raw), ...described]
  const titleOf = (path: string): string =>
    fileTitle(
      path,
      sources.filter(({file}) => path === `raw/${file}`)
    )
  return [
    () => below(payloadFolder, content),
    (written) => [
      {
        path: `${payloadFolder}datapackage.json`,
        content: dataPackage(dataset, settings, tables, darwinCore, payload(written))
      }
    ],
    (written) => [
      {
        path: payloadFolder + crateFile,
        content: roCrate(
          dataset,
          payload(written),
          titleOf,
          parts.inputs.map((path) => `raw/${path}`)
        )
      }
    ],
    ...bagStages(bagInfo(dataset))
  ]
}

/** Digests of what is below data/, with paths from there. */
function payload(written: readonly FileDigest[]): readonly FileDigest[] {
  return written
    .filter(({path}) => path.startsWith(payloadFolder))
    .map((digest) => ({...digest, path: digest.path.slice(payloadFolder.length)}))
    .sort((a, b) => codeUnitOrder(a.path, b.path))
}

function bagInfo({title, id, authors, contact, issued, toolVersion, description}: Dataset): BagInfo {
  const [lead] = authors
  const lines: readonly (readonly [string, string | undefined])[] = [
    ['Contact-Name', lead?.name ?? contact],
    ['Contact-Email', lead?.email],
    ['External-Identifier', id],
    ['External-Description', `${title}. ${description}`],
    ['Bagging-Date', issued],
    ['Bag-Software-Agent', `pitfolio ${toolVersion}`]
  ]
  return lines.filter((line): line is readonly [string, string] => line[1] !== undefined)
}
