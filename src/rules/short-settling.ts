import type {Day} from '../model/day.ts'
import {fewOf} from './few-of.ts'
import type {TrapAtWork} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import type {Found, Rule} from './rule.ts'
import type {StudyIndex} from './study-index.ts'

const shortest = 2
const week = 7

export const shortSettling = {
  code: 'short-settling',
  severity: 'note',
  summary: 'traps were opened soon after digging in, or nobody says when they were dug in',
  why: 'Disturbed ground draws animals: catches are high right after digging and then fall, most of all for ants, so the first round is not like the others.',
  remedy:
    'fill `installed` in traps.csv, or `protocol.settling_nights`; next time leave traps capped for a week before opening',
  source:
    'a week closed before opening: Greenslade 1973; the effect on ants gone after 48 hours: Jimenez-Carmona et al. 2019',
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': 'trap_id,site_id,installed\nW1-1,W1,2026-05-03\nM1-1,M1,2026-04-30\n'},
      findings: [
        'traps.csv:2:9: 1 trap was opened under 2 nights after digging in: W1-1',
        'traps.csv:3:9: 1 trap was opened 2 to 6 nights after digging in: M1-1'
      ]
    },
    {
      files: {'traps.csv': 'trap_id,site_id\nW1-1,W1\nM1-1,M1\n'},
      findings: ['traps.csv:2: nobody says when 2 traps were dug in: W1-1 and M1-1']
    },
    {
      files: {'traps.csv': 'trap_id,site_id,installed\nW1-1,W1,2026-05-25\nM1-1,M1,2026-04-27\n'},
      findings: ['traps.csv:2:9: 1 trap was dug in after being opened: W1-1']
    }
  ],
  *check({settings}, index) {
    const byCase = new Map<Case, TrapAtWork[]>(cases.map((one) => [one, []]))
    for (const at of index.fieldwork.traps) {
      const opened = firstOpened(at, index)
      if (opened === undefined) continue
      const {installed} = at.trap
      const nights = installed === undefined ? settings.protocol?.settling_nights : opened - installed
      const fitting = cases.find(({fits}) => fits(nights))
      if (fitting !== undefined) byCase.get(fitting)?.push(at)
    }
    for (const [one, traps] of byCase) yield* findingOf(one, traps, index)
  }
} as const satisfies Rule

interface Case {
  readonly severity: 'caution' | 'note'
  readonly fits: (nights: number | undefined) => boolean
  readonly message: (traps: string, were: string) => string
}

const cases: readonly Case[] = [
  {
    severity: 'note',
    fits: (nights) => nights === undefined,
    message: (traps, were) => `nobody says when ${traps} ${were} dug in`
  },
  {
    severity: 'caution',
    fits: (nights = 0) => nights < 0,
    message: (traps, were) => `${traps} ${were} dug in after being opened`
  },
  {
    severity: 'caution',
    fits: (nights = 0) => nights < shortest,
    message: (traps, were) => `${traps} ${were} opened under ${shortest} nights after digging in`
  },
  {
    severity: 'note',
    fits: (nights = 0) => nights < week,
    message: (traps, were) => `${traps} ${were} opened ${shortest} to ${week - 1} nights after digging in`
  }
]

function firstOpened({trap}: TrapAtWork, index: StudyIndex): Day | undefined {
  const first = (index.exposuresOfTrap.get(trap.trapId) ?? []).find(({row}) => !index.isAside('visits', row))
  return first?.opened?.day
}

function* findingOf(
  {severity, message}: Case,
  traps: readonly TrapAtWork[],
  index: StudyIndex
): Iterable<Found> {
  const [first] = traps
  if (first === undefined) return
  const were = traps.length === 1 ? 'was' : 'were'
  yield {
    place: index.place('traps', first.trap.row, 'installed'),
    message: `${message(numberOf(traps.length, 'trap'), were)}: ${fewOf(traps.map(({trap}) => trap.trapId))}`,
    severity
  }
}
