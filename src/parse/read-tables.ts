import type {TableName} from '../model/column.ts'
import {tables} from '../model/columns.ts'
import type {DescribedRow} from '../model/described-row.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'
import type {Problem} from '../model/study.ts'
import {catchBySite, isEffortBySite} from './effort-by-site.ts'
import {fileOf} from './file-of.ts'
import {gatherShared} from './gather-shared.ts'
import {missingTable} from './missing-files.ts'
import type {CellConventions} from './read-cell.ts'
import {type ReadTable, readTable} from './read-table.ts'

/** The tables of a study folder that could be read, and why others could not. */
export interface ReadTables {
  readonly found: ReadonlyMap<TableName, ReadTable>
  /** Whether effort and catch are told by site, without traps and visits. */
  readonly isBySite: boolean
  readonly unreadable: readonly Problem[]
}

/** Every table of a study, in the order of their descriptions: whether there are traps shows in the sites. */
export async function readTables(source: StudySource, settings: Settings): Promise<ReadTables> {
  const found = new Map<TableName, ReadTable>()
  const unreadable: Problem[] = []
  let isBySite = false
  for (const described of Object.values(tables)) {
    if (isBySite && (described.name === 'traps' || described.name === 'visits')) continue
    const table = isBySite && described.name === 'catch' ? catchBySite : described
    const file = fileOf(table, settings)
    if (!source.files.has(file)) {
      if (!table.optional || settings.files?.[table.name] !== undefined)
        unreadable.push(missingTable(file, table, source, settings))
      continue
    }
    const outcome = await readTable(source, table, file, settings, conventionsOf(settings))
    if ('unreadable' in outcome) {
      unreadable.push(...outcome.unreadable)
      continue
    }
    found.set(table.name, gatherShared(table, outcome, settings))
    if (table.name === 'sites') isBySite = isEffortBySite(source, settings, outcome.source)
  }
  return {found, isBySite, unreadable}
}

function conventionsOf(settings: Settings): CellConventions {
  return {
    order: settings.dates,
    decimal: settings.decimal,
    conditions: Object.keys(settings.conditions ?? {}),
    words: settings.words ?? {}
  }
}

/** The rows of a table; none of one that is not there. */
export function rowsOf<Name extends TableName>(
  found: ReadTables['found'],
  name: Name
): readonly DescribedRow<Name>[] {
  // readCell gives each kind of column the value that DescribedRow says: the one place where that is taken on trust.
  return (found.get(name)?.rows ?? []) as readonly unknown[] as readonly DescribedRow<Name>[]
}
