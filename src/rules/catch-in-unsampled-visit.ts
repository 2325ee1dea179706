import {isoMoment} from '../model/day.ts'
import type {Exposure} from '../model/study.ts'
import type {Rule} from './rule.ts'

export const catchInUnsampledVisit = {
  code: 'catch-in-unsampled-visit',
  severity: 'caution',
  summary: 'there are catch rows for a visit that is said to have none',
  why: 'The two records contradict each other: the animals stay on the species lists, outside the effort, and the visit earns none.',
  remedy: 'correct `condition` or `sample` in visits.csv, or the catch rows',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,condition,sample\nW1-1,2026-05-04,2026-05-18,missing,\nW1-1,2026-05-18,2026-06-01,intact,sorted\n'
      },
      findings: ['visits.csv:2:28: trap W1-1, collected on 2026-05-18, is `missing` but has 1 catch row']
    }
  ],
  *check({exposures}, index) {
    for (const exposure of exposures) {
      const {row, trapId, collected} = exposure
      const word = contradictingWord(exposure)
      if (word === undefined || index.isAside('visits', row)) continue
      const rows = (index.matching.ofExposure.get(row) ?? []).filter(
        (record) => record.count > 0 && !index.isAside('catch', record.row)
      ).length
      if (rows === 0) continue
      yield {
        place: index.place('visits', row, word.column),
        message: `trap ${trapId}, collected on ${isoMoment(collected)}, is \`${word.text}\` but has ${rows} catch ${rows === 1 ? 'row' : 'rows'}`,
        cell: word.text
      }
    }
  }
} as const satisfies Rule

function contradictingWord({condition, sample}: Exposure): {column: string; text: string} | undefined {
  if (['missing', 'spilled', 'closed'].includes(condition)) return {column: 'condition', text: condition}
  return sample === 'empty' || sample === 'lost' ? {column: 'sample', text: sample} : undefined
}
