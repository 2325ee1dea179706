import type {TableName} from '../model/column.ts'
import type {CatchRecord, Study} from '../model/study.ts'
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
    },
    {
      files: {'sites.csv': 'site_id,habitat\nW1,wood\nM1,medow\n'},
      findings: [
        'traps.csv:3:6: 5 rows of traps.csv belong to site `M1`, which is set aside',
        'visits.csv:4:1: 5 rows of visits.csv belong to site `M1`, which is set aside'
      ]
    }
  ],
  *check(study, index) {
    const siteIsGone = (siteId: string) => isGone(siteId, 'sites', index.sites, study, index)
    const parentOfTrapRow = ({trapId}: {readonly trapId?: string}): string | undefined => {
      if (trapId === undefined || !isGone(trapId, 'traps', index.traps, study, index)) return undefined
      const siteId = index.traps.get(trapId)?.siteId
      // What went wrong was the site: it is named, and once for all of its traps.
      return siteId !== undefined && siteIsGone(siteId) ? `site \`${siteId}\`` : `trap \`${trapId}\``
    }
    const parentOfSiteRow = ({siteId}: {readonly siteId?: string}): string | undefined =>
      siteId !== undefined && siteIsGone(siteId) ? `site \`${siteId}\`` : undefined
    const parentOfCatch = (record: CatchRecord) =>
      record.trapId === undefined ? parentOfSiteRow(record) : parentOfTrapRow(record)
    yield* orphans('traps', study.traps, parentOfSiteRow, index)
    yield* orphans('visits', study.exposures, parentOfTrapRow, index)
    yield* orphans('catch', study.catch, parentOfCatch, index)
    yield* catchOfVisitsSetAside(index)
  }
} as const satisfies Rule

function isGone(
  id: string,
  table: 'sites' | 'traps',
  known: ReadonlyMap<string, {readonly row: number}>,
  study: Study,
  index: StudyIndex
): boolean {
  const row = known.get(id)?.row
  return row === undefined ? study.tables[table]?.unusableIds.has(id) === true : index.isAside(table, row)
}

function* orphans<Row extends {readonly row: number}>(
  table: 'traps' | 'visits' | 'catch',
  rows: readonly Row[],
  parentSetAside: (row: Row) => string | undefined,
  index: StudyIndex
): Iterable<Found> {
  const byParent = new Map<string, Row[]>()
  for (const row of rows) {
    const parent = parentSetAside(row)
    if (parent === undefined || index.isAside(table, row.row)) continue
    const list = byParent.get(parent)
    if (list) list.push(row)
    else byParent.set(parent, [row])
  }
  for (const [parent, list] of byParent) {
    yield {
      place: index.place(table, list[0]!.row, table === 'traps' ? 'site_id' : 'trap_id'),
      message: `${rowsOf(table, list.length)} to ${parent}, which is set aside`,
      setsAside: list.map((row) => reference(table, row))
    }
  }
}

function* catchOfVisitsSetAside(index: StudyIndex): Iterable<Found> {
  const byTrap = new Map<string, {visits: number[]; rows: CatchRecord[]}>()
  for (const [visit, records] of index.matching.ofExposure) {
    if (!index.isAside('visits', visit)) continue
    const rows = records.filter(({row}) => !index.isAside('catch', row))
    const trapId = rows[0]?.trapId
    if (trapId === undefined) continue
    const ofTrap = byTrap.get(trapId) ?? {visits: [], rows: []}
    byTrap.set(trapId, ofTrap)
    ofTrap.visits.push(visit)
    for (const row of rows) ofTrap.rows.push(row)
  }
  for (const [trapId, {visits, rows}] of byTrap) {
    const which = visits.length === 1 ? 'a visit' : `${visits.length} visits`
    yield {
      place: index.place('catch', rows[0]!.row, 'collected'),
      message: `${rowsOf('catch', rows.length)} to ${which} of trap \`${trapId}\` that ${visits.length === 1 ? 'is' : 'are'} set aside`,
      related: [{place: index.place('visits', visits[0]!), message: 'the visit'}],
      setsAside: rows.map((row) => reference('catch', row))
    }
  }
}

function rowsOf(table: TableName, rows: number): string {
  return `${rows} ${rows === 1 ? 'row' : 'rows'} of ${table}.csv ${rows === 1 ? 'belongs' : 'belong'}`
}
