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
    }
  ],
  *check(study, index) {
    const unusable = study.tables.traps?.unusableIds
    // A million catch rows name a few hundred traps: ask for a suggestion once each.
    const suggestions = new Map<string, string | undefined>()
    const suggest = (trapId: string): string | undefined => {
      if (!suggestions.has(trapId)) suggestions.set(trapId, nearestName(trapId, index.traps.keys()))
      return suggestions.get(trapId)
    }
    for (const exposure of study.exposures) yield* unknown('visits', exposure, exposure.trapId, index, unusable, suggest)
    for (const record of study.catch) {
      if (record.trapId !== undefined) yield* unknown('catch', record, record.trapId, index, unusable, suggest)
    }
  }
} as const satisfies Rule

function* unknown(
  table: 'visits' | 'catch',
  row: {readonly row: number},
  trapId: string,
  index: StudyIndex,
  unusable: ReadonlyMap<string, number> | undefined,
  suggest: (trapId: string) => string | undefined
): Iterable<Found> {
  if (index.traps.has(trapId) || unusable?.has(trapId)) return
  const meant = suggest(trapId)
  yield {
    place: index.place(table, row.row, 'trap_id'),
    message: `there is no trap \`${trapId}\` in traps.csv`,
    cell: trapId,
    ...(meant !== undefined && {remedy: `did you mean \`${meant}\`?`}),
    setsAside: [reference(table, row)]
  }
}
