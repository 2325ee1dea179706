import {type BagProblem, isListed} from '../archive-study.ts'
import type {Unreadable} from '../check-study.ts'
import type {OpenArchive} from '../files/open-zip.ts'
import type {ArchiveFile} from '../model/archive-file.ts'
import type {FileDigest} from '../model/file-digest.ts'
import type {Provenance} from '../model/provenance.ts'
import type {Recomputed} from './recomputed.ts'
import {counted, grouped} from './terminal/number-words.ts'
import {comparisonLines, documentsSection, numbersSame, type Section} from './terminal/verify-text.ts'
import {unreadableFindings} from './unreadable-findings.ts'

/** The whole in one sentence. */
export function archiveVerdict(sections: readonly Section[]): string {
  const isSound = (title: string): boolean =>
    sections.filter((section) => section.title === title).every(({ok}) => ok)
  if (sections.every(({ok}) => ok)) return 'The archive is whole, and its numbers follow from its records.'
  if (isSound('files')) return 'The archive is whole, but what is in it does not follow from its records.'
  return isSound('numbers') && isSound('documents') && isSound('records')
    ? 'The archive is not as it was made, though its numbers follow from its records.'
    : 'The archive is not as it was made, and its numbers do not follow from its records.'
}

/** Whether every file is as it was. */
export function filesSection({files}: OpenArchive, problems: readonly BagProblem[]): Section {
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

/** Whether the report was made from the files that the archive says it was, and whether the raw ones are those. */
export function originSection(
  {originals, raw}: ArchiveFile,
  {inputs}: Provenance,
  digests: readonly FileDigest[]
): Section {
  const known = new Map(originals.map((original) => [original.path, original]))
  const found = new Map(digests.map((digest) => [digest.path, digest]))
  const others = inputs.filter(({path, sha256}) => known.get(path)?.sha256 !== sha256)
  const copies = raw === 'exact' ? originals : []
  const changed = copies.filter(({path, sha512}) => found.get(`data/raw/${path}`)?.sha512 !== sha512)
  const items = [
    ...others.map(({path}) => `- ${path} is not the file that the report was made from`),
    ...changed.map(({path}) => `- raw/${path} is not the original file`)
  ]
  return items.length === 0
    ? {title: 'records', ok: true, lines: [originWords(raw, originals.length)]}
    : {title: 'records', ok: false, lines: ['archive.json lists other files of the study:', ...items]}
}

function originWords(raw: ArchiveFile['raw'], count: number): string {
  const files = counted(count, 'file')
  return raw === 'exact'
    ? `raw/ holds the ${files} of the study as they were, and the report was made from them.`
    : `The report was made from files of the study whose checksums archive.json lists (${files}); raw/ holds a copy that keeps some things back.`
}

/** What came of computing an archive again. */
export function recomputedSections(again: Recomputed | Unreadable, stated: ArchiveFile): readonly Section[] {
  if ('unreadable' in again) return [failedSection(again)]
  const {comparison, documents} = again
  const {notRecomputable, raw, heldBack} = stated
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
      ...comparisonLines(held, 'in the report', 'from the copy', Number.POSITIVE_INFINITY)
    ]
  }
  const isForOthers = raw !== 'exact' || heldBack.length === 0
  const kept = 'This archive holds the original files and is not for publication.'
  return [
    numbers,
    ...(held.length === 0 ? [] : [cannot]),
    documentsSection(documents),
    ...(isForOthers ? [] : [{title: 'held back', ok: true, lines: [kept]} as const])
  ]
}

/** Why nothing could be computed again. */
export function failedSection(reason: string | Unreadable): Section {
  const lines =
    typeof reason === 'string'
      ? [`Nothing could be computed again: ${reason}.`]
      : [
          'Nothing could be computed again, because the raw files cannot be read:',
          ...unreadableFindings(reason.unreadable).map(({place, message}) => `- ${place.file}: ${message}`)
        ]
  return {title: 'numbers', ok: false, lines}
}
