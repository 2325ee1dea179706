import type {RowReference} from '../model/finding.ts'
import {nearestName} from '../model/nearest-name.ts'
import type {Found, Rule} from './rule.ts'
import {reference, type StudyIndex} from './study-index.ts'

export const unknownTrap = {
  code: 'unknown-trap',
  severity: 'error',
  settled: true,
  summary: 'a visit or a catch names a trap that traps.csv does not have',
  why: 'Without its trap a row belongs to no site and no habitat, so it is left out of every number.',
  remedy: 'correct the spelling, or add the trap to traps.csv',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'catch.csv': 'trap_id,collected,taxon,count\nW1-11,2026-05-18,Carabus problematicus,3\n'},
      findings: ['catch.csv:2:1: there is no trap `W1-11` in traps.csv']
    },
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-11,2026-05-18,Carabus problematicus,3\nW1-11,2026-05-18,Abax parallelepipedus,2\n'
      },
      findings: ['catch.csv:2:1: there is no trap `W1-11` in traps.csv (2 rows of catch.csv)']
    }
  ],
  *check(study, index) {
    const unusable = study.tables.traps?.unusableIds
    const isUnknown = (trapId: string) => !index.traps.has(trapId) && !unusable?.has(trapId)
    yield* unknown('visits', study.exposures, isUnknown, index)
    yield* unknown('catch', study.catch, isUnknown, index)
  }
} as const satisfies Rule

/** Once for each trap: a slip in its id stands in every row that was copied from the first. */
function* unknown(
  table: 'visits' | 'catch',
  rows: readonly {readonly row: number; readonly trapId?: string}[],
  isUnknown: (trapId: string) => boolean,
  index: StudyIndex
): Iterable<Found> {
  const byTrap = new Map<string, RowReference[]>()
  for (const row of rows) {
    if (row.trapId === undefined || !isUnknown(row.trapId)) continue
    const references = byTrap.get(row.trapId)
    if (references) references.push(reference(table, row))
    else byTrap.set(row.trapId, [reference(table, row)])
  }
  for (const [trapId, references] of byTrap) {
    const remedy = remedyFor(trapId, index)
    const rowCount = new Set(references.map(({row}) => row)).size
    const many = rowCount === 1 ? '' : ` (${rowCount} rows of ${table}.csv)`
    yield {
      place: index.place(table, references[0]!.row, 'trap_id'),
      message: `there is no trap \`${trapId}\` in traps.csv${many}`,
      cell: trapId,
      ...(remedy !== undefined && {remedy}),
      setsAside: references
    }
  }
}

/** Ids such as `1-2` are what spreadsheets take for days of the year. */
function remedyFor(trapId: string, index: StudyIndex): string | undefined {
  if (/^(\d{1,2}[-. ][a-z]{3}\.?|[a-z]{3}[- ]\d{2})$/i.test(trapId))
    return 'a spreadsheet seems to have made a date of the id: format the column as text, enter the ids again and save'
  const meant = nearestName(trapId, index.traps.keys())
  return meant === undefined ? undefined : `did you mean \`${meant}\`?`
}
