import type {TableName} from '../model/columns.ts'
import type {Study} from '../model/study.ts'
import type {Found, Rule} from './rule.ts'
import {reference, type StudyIndex} from './study-index.ts'

export const rowOfSomethingSetAside = {
  code: 'row-of-something-set-aside',
  severity: 'error',
  settled: true,
  summary: 'rows belong to a site, trap or visit that is itself set aside',
  why: 'What is set aside is set aside from everything, with all that hangs on it.',
  remedy: 'mend the finding of the site, trap or visit; these rows then come back by themselves',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': 'trap_id,site_id\nW1-1,W1\nM1-1,M11\n'},
      findings: ['visits.csv:4:1: 1 row of visits.csv belongs to trap `M1-1`, which is set aside']
    }
  ],
  *check(study, index) {
    yield* orphans(study, index, 'sites', 'traps', study.traps, ({siteId}) => siteId, index.sites, 'site')
    yield* orphans(
      study,
      index,
      'traps',
      'visits',
      study.exposures,
      ({trapId}) => trapId,
      index.traps,
      'trap'
    )
    yield* orphans(study, index, 'traps', 'catch', study.catch, ({trapId}) => trapId, index.traps, 'trap')
    yield* catchOfVisitsSetAside(index)
  }
} as const satisfies Rule

function* orphans<Row extends {readonly row: number}>(
  study: Study,
  index: StudyIndex,
  parentTable: 'sites' | 'traps',
  table: TableName,
  rows: readonly Row[],
  parentId: (row: Row) => string | undefined,
  parents: ReadonlyMap<string, {readonly row: number}>,
  what: string
): Iterable<Found> {
  const byParent = new Map<string, Row[]>()
  for (const row of rows) {
    const id = parentId(row)
    if (id === undefined || index.isAside(table, row.row)) continue
    const parent = parents.get(id)
    const gone =
      parent === undefined
        ? study.tables[parentTable]?.unusableIds.has(id)
        : index.isAside(parentTable, parent.row)
    if (!gone) continue
    const list = byParent.get(id)
    if (list) list.push(row)
    else byParent.set(id, [row])
  }
  for (const [id, list] of byParent) {
    const [first] = list
    if (first === undefined) continue
    yield {
      place: index.place(table, first.row, table === 'traps' ? 'site_id' : 'trap_id'),
      message: `${list.length} ${list.length === 1 ? 'row' : 'rows'} of ${table}.csv ${list.length === 1 ? 'belongs' : 'belong'} to ${what} \`${id}\`, which is set aside`,
      setsAside: list.map((row) => reference(table, row))
    }
  }
}

function* catchOfVisitsSetAside(index: StudyIndex): Iterable<Found> {
  for (const [visit, records] of index.matching.ofExposure) {
    if (!index.isAside('visits', visit)) continue
    const rows = records.filter(({row}) => !index.isAside('catch', row))
    const [first] = rows
    if (first === undefined) continue
    yield {
      place: index.place('catch', first.row, 'collected'),
      message: `${rows.length} ${rows.length === 1 ? 'row' : 'rows'} of catch.csv ${rows.length === 1 ? 'belongs' : 'belong'} to a visit of trap \`${first.trapId}\` that is set aside`,
      related: [{place: index.place('visits', visit), message: 'the visit'}],
      setsAside: rows.map((row) => reference('catch', row))
    }
  }
}
