import type {TableName} from '../model/column.ts'
import type {Study} from '../model/study.ts'
import type {Found, Rule} from './rule.ts'
import {sameCells} from './same-cells.ts'
import {reference, type StudyIndex} from './study-index.ts'

export const duplicateId = {
  code: 'duplicate-id',
  severity: 'error',
  settled: true,
  summary: 'a site, trap or taxon is described in two rows',
  why: 'Two rows that differ leave open which one is true; taking either would be a guess.',
  remedy: 'keep one row for each id',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': 'trap_id,site_id\nW1-1,W1\nM1-1,M1\nW1-1,M1\n'},
      findings: ['traps.csv:4:1: `W1-1` is described again and differently, so neither row is used']
    },
    {
      files: {'traps.csv': 'trap_id,site_id\nW1-1,W1\nM1-1,M1\nW1-1,W1\n'},
      findings: ['traps.csv:4:1: `W1-1` stands here again, word for word; this row is not used']
    }
  ],
  *check(study, index) {
    yield* duplicates('sites', 'site_id', study.sites, ({siteId}) => siteId, index)
    yield* duplicates('traps', 'trap_id', study.traps, ({trapId}) => trapId, index)
    yield* duplicates('taxa', 'taxon', study.taxa, ({taxon}) => taxon, index)
  }
} as const satisfies Rule

function* duplicates<Row extends Study['sites'][number] | Study['traps'][number] | Study['taxa'][number]>(
  table: TableName,
  column: string,
  rows: readonly Row[],
  id: (row: Row) => string,
  index: StudyIndex
): Iterable<Found> {
  const first = new Map<string, Row>()
  for (const row of rows) {
    const earlier = first.get(id(row))
    if (earlier === undefined) {
      first.set(id(row), row)
      continue
    }
    const same = sameCells(earlier, row)
    yield {
      place: index.place(table, row.row, column),
      message: same
        ? `\`${id(row)}\` stands here again, word for word; this row is not used`
        : `\`${id(row)}\` is described again and differently, so neither row is used`,
      cell: id(row),
      related: [{place: index.place(table, earlier.row, column), message: 'first described here'}],
      setsAside: same ? [reference(table, row)] : [reference(table, earlier), reference(table, row)]
    }
  }
}
