import {failedExposure} from './failed-exposure.ts'
import {grouped} from './fieldwork.ts'
import type {Rule} from './rule.ts'

/** Ours, no source: the difference in percentage points beyond which losses are called unequal. */
const mostPoints = 10

export const lossesDifferBetweenHabitats = {
  code: 'losses-differ-between-habitats',
  severity: 'caution',
  summary: 'one habitat lost far more of its trap-nights than another',
  why: 'Losses are not random: where they fall on times of high activity they bias a comparison, and no correction of effort undoes that.',
  remedy:
    'compare the rounds without losses too, and say it in `limitations`; the report shows the result under other rules for effort',
  source: "Kotze, O'Hara & Lehvavirta 2012; the limit, 10 percentage points, is a proposal of ours",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'sites.csv': 'site_id,habitat\nW1,wood\nM1,meadow\n',
        'visits.csv':
          'trap_id,opened,collected,condition,sample\nW1-1,2026-05-04,2026-05-18,intact,sorted\nW1-1,2026-05-18,2026-06-01,disturbed,sorted\nM1-1,2026-05-04,2026-05-18,intact,empty\n'
      },
      findings: [
        'visits.csv:3:28: traps failed or samples were lost in 50 % of the nights of wood, 0 % of meadow'
      ]
    }
  ],
  *check({settings}, index) {
    const {visits, habitats} = index.fieldwork
    const byHabitat = grouped(visits, ({at}) => at.site.habitat)
    const losses = habitats.flatMap((habitat) => {
      const own = byHabitat.get(habitat) ?? []
      const lost = own.filter(({exposure}) => failedExposure(exposure, settings))
      const nightsOf = (some: typeof own) => some.reduce((sum, {nights}) => sum + nights, 0)
      return own.length === 0 ? [] : [{habitat, lost, percent: (100 * nightsOf(lost)) / nightsOf(own)}]
    })
    const [worst, ...others] = losses.sort((a, b) => b.percent - a.percent)
    const best = others.at(-1)
    if (worst === undefined || best === undefined || worst.percent - best.percent <= mostPoints) return
    yield {
      place: index.place('visits', worst.lost[0]!.exposure.row, 'condition'),
      message: `traps failed or samples were lost in ${Math.round(worst.percent)} % of the nights of ${worst.habitat}, ${Math.round(best.percent)} % of ${best.habitat}`
    }
  }
} as const satisfies Rule
