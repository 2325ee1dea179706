import {nearestName} from '../model/nearest-name.ts'
import type {Found, Rule} from './rule.ts'
import {reference, type StudyIndex} from './study-index.ts'

export const unknownSite = {
  code: 'unknown-site',
  severity: 'error',
  settled: true,
  summary: 'a trap or a pooled catch names a site that sites.csv does not have',
  why: 'Without its site a trap belongs to no habitat, so it is left out of every number.',
  remedy: 'correct the spelling, or add the site to sites.csv',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': 'trap_id,site_id\nW1-1,W1\nM1-1,M11\n'},
      findings: ['traps.csv:3:6: there is no site `M11` in sites.csv']
    }
  ],
  *check(study, index) {
    for (const trap of study.traps)
      yield* unknown('traps', trap, trap.siteId, index, study.tables.sites?.unusableIds)
    for (const record of study.catch) {
      if (record.trapId === undefined && record.siteId !== undefined) {
        yield* unknown('catch', record, record.siteId, index, study.tables.sites?.unusableIds)
      }
    }
  }
} as const satisfies Rule

function* unknown(
  table: 'traps' | 'catch',
  row: {readonly row: number},
  siteId: string,
  index: StudyIndex,
  unusable: ReadonlyMap<string, number> | undefined
): Iterable<Found> {
  if (index.sites.has(siteId) || unusable?.has(siteId)) return
  const meant = nearestName(siteId, index.sites.keys())
  yield {
    place: index.place(table, row.row, 'site_id'),
    message: `there is no site \`${siteId}\` in sites.csv`,
    cell: siteId,
    ...(meant !== undefined && {remedy: `did you mean \`${meant}\`?`}),
    setsAside: [reference(table, row)]
  }
}
