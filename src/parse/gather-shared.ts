import type {TableDescription, TableName} from '../model/column.ts'
import {tables} from '../model/columns.ts'
import type {Settings} from '../model/settings.ts'
import type {Problem} from '../model/study.ts'
import {fileOf} from './file-of.ts'
import {gatherRows} from './gather-rows.ts'
import type {ReadTable} from './read-table.ts'

/** What makes two lines of a file that serves several tables the same site, trap, visit or taxon. */
const keyFields: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  sites: ['siteId'],
  traps: ['trapId'],
  taxa: ['taxon'],
  visits: ['trapId', 'opened', 'collected']
}

/**
 * Where one file serves several tables, its lines describe the same site or trap again and again: they are made
 * one row each. Visits are made one only where the file also holds the catch, line by line.
 */
export function gatherShared(table: TableDescription, outcome: ReadTable, settings: Settings): ReadTable {
  const sharing = Object.values(tables).filter(
    (other) => other !== table && fileOf(other, settings) === outcome.source.file
  )
  const keys = keyFields[table.name]
  if (sharing.length === 0) return outcome
  // Columns that mean nothing to this table belong to another one.
  const problems = outcome.problems.filter(
    ({code}) => code !== 'unknown-column' && code !== 'duplicate-column'
  )
  if (keys === undefined) return {...outcome, problems}
  if (table.name === 'visits' && !sharing.some(({name}) => name === 'catch')) return {...outcome, problems}
  const {rows, disagreements} = gatherRows(outcome.rows, keys)
  const unusable = new Set(problems.filter(({setsAside}) => setsAside).map(({row}) => row)).size
  const disagreeing = [...disagreements].map(
    ([field, differing]): Problem => ({
      code: 'cells-disagree',
      place: {file: outcome.source.file},
      message: `\`${snakeCase(field)}\` differs between lines of the same ${table.name === 'taxa' ? 'taxon' : table.name.slice(0, -1)} (${differing.length} of ${rows.length}); it is left empty there`,
      setsAside: false
    })
  )
  return {
    source: {...outcome.source, rowsRead: rows.length + unusable},
    rows,
    problems: [...problems, ...disagreeing]
  }
}

function snakeCase(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
}
