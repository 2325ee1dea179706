import type {ArchiveEntry} from '../../model/archive-entry.ts'
import type {StudySource} from '../../model/source.ts'
import type {SourceTable, Study} from '../../model/study.ts'
import type {Reading} from '../reading.ts'
import {headerTest} from '../table-header.ts'
import {blankCells, type TableEdit, tableEdit} from './cell-edits.ts'
import {isPicture} from './held-positions.ts'
import type {PrivateMatters} from './private-matters.ts'
import {rewriteTable} from './rewrite-table.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/**
 * The files of a study as others may see them. Files that pitfolio does not read are not among them: nobody knows
 * what they give away.
 *
 * @param inputs paths of the files that pitfolio read.
 */
export function generalisedCopy(
  source: StudySource,
  inputs: readonly string[],
  study: Study,
  privacy: StudyPrivacy,
  matters: PrivateMatters,
  reading: Reading
): readonly ArchiveEntry[] {
  const tables = Object.values(study.tables)
  return inputs.map((path) => {
    const here = tables.filter(({file}) => file === path)
    if (here.length > 0 && needsEdit(here, matters))
      return {path, content: () => rewritten(here, source, study, privacy, matters, reading)}
    if (path === 'study.yaml' && matters.emails.length > 0)
      return {path, content: () => withoutEmails(source, path, matters.emails, reading)}
    if (isPicture(path)) return {path, content: () => withoutPlace(source, path, reading)}
    return {path, content: () => source.read(path)}
  })
}

/** Place, people and comments are beside the pixels, in more forms than can be told apart: all of it goes. */
async function* withoutPlace(source: StudySource, path: string, reading: Reading): AsyncIterable<Uint8Array> {
  yield reading.pictureForOthers(path, await reading.bytes(source, path))
}

/** Which tables may hold something private; weather tells no more than a place of the size of a county. */
function needsEdit(here: readonly SourceTable[], {positions, names}: PrivateMatters): boolean {
  return here.some(
    (table) =>
      (positions &&
        (table.name === 'sites' ||
          table.name === 'traps' ||
          (hidesUnknown(table) && table.unknownHeaders.length > 0))) ||
      (names && (table.name === 'catch' || table.name === 'taxa'))
  )
}

function hidesUnknown({name}: SourceTable): boolean {
  return name !== 'taxa' && name !== 'weather'
}

function rewritten(
  here: readonly SourceTable[],
  source: StudySource,
  study: Study,
  privacy: StudyPrivacy,
  matters: PrivateMatters,
  reading: Reading
): AsyncIterable<Uint8Array> {
  const [first] = here as readonly [SourceTable, ...SourceTable[]]
  const editFor = (header: readonly string[]): TableEdit => {
    const edits = here.flatMap(({name}) => tableEdit(name, header, study, privacy, matters, reading) ?? [])
    const unknown = matters.positions && here.some(hidesUnknown) ? unknownColumns(header, here) : []
    return {
      header: (cells) => {
        for (const edit of edits) edit.header(cells)
      },
      record: (cells) => {
        for (const edit of edits) edit.record(cells)
        blankCells(unknown)(cells)
      }
    }
  }
  return rewriteTable(source, first, headerTest(first), editFor, reading)
}

/** Columns that mean nothing to any table of the file. */
function unknownColumns(header: readonly string[], here: readonly SourceTable[]): readonly number[] {
  return [...header.keys()].filter((index) =>
    here.every(({unknownHeaders}) =>
      unknownHeaders.some((unknown) => unknown.header === header[index]!.trim())
    )
  )
}

async function* withoutEmails(
  source: StudySource,
  path: string,
  emails: readonly string[],
  reading: Reading
): AsyncIterable<Uint8Array> {
  const text = await reading.text(source, path)
  yield new TextEncoder().encode(emails.reduce((left, email) => left.replaceAll(email, 'withheld'), text))
}
