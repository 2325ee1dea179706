import {areUnequal, intervalsByHabitat, intervalsByRound, intervalWords} from './habitat-intervals.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

export const unequalIntervals = {
  code: 'unequal-intervals',
  severity: 'caution',
  summary: 'traps of different habitats were open for different times in the same round',
  why: 'Catch does not simply grow with time, so rates of that round differ between habitats for no other reason than the interval.',
  remedy:
    'check the dates; if they are right, say so in `limitations`, and serve all habitats in the same days next time',
  source: 'Holland & Reynolds 2005; the limit, longest over shortest 1.5, is a proposal of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'sites.csv': 'site_id,habitat\nW1,wood\nM1,meadow\n',
        'visits.csv':
          'trap_id,opened,collected,sample,round\nW1-1,2026-05-04,2026-05-11,empty,1\nM1-1,2026-05-04,2026-05-11,empty,1\nW1-1,2026-05-11,2026-05-18,sorted,2\nM1-1,2026-05-11,2026-05-18,empty,2\nW1-1,2026-05-18,2026-05-25,empty,3\nM1-1,2026-05-18,2026-06-01,empty,3\n'
      },
      findings: [
        'visits.csv:6:6: intervals of 1 round differ between habitats; in round 3: wood 7, meadow 14 nights'
      ]
    }
  ],
  *check(_study, index) {
    const {fieldwork} = index
    // Where intervals differ in the whole season, the rule on confounding has said so.
    if (areUnequal(intervalsByHabitat(fieldwork))) return
    const unequal = [...intervalsByRound(fieldwork)].filter(([, intervals]) => areUnequal(intervals))
    const [first] = unequal
    if (first === undefined) return
    const [round, intervals] = first
    const visit = fieldwork.visits.find((one) => one.round === round)!
    yield {
      place: index.place('visits', visit.exposure.row, 'opened'),
      message: `intervals of ${numberOf(unequal.length, 'round')} differ between habitats; in round ${round}: ${intervalWords(intervals)}`
    }
  }
} as const satisfies Rule
