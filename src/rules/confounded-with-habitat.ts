import type {Place} from '../model/place.ts'
import {type Fieldwork, grouped, type Visit} from './fieldwork.ts'
import {areUnequal, intervalsByHabitat, intervalWords} from './habitat-intervals.ts'
import type {Rule} from './rule.ts'
import type {StudyIndex} from './study-index.ts'

/** Habitats that share less than this part of their visits differ in line with habitat. Common practice, no source. */
const leastOverlap = 0.5

export const confoundedWithHabitat = {
  code: 'confounded-with-habitat',
  severity: 'caution',
  summary: 'traps, covers, fluids or intervals differ in line with habitat',
  why: 'Each of them changes the catch by itself, so a difference between habitats cannot be told from a difference of method, and the report offers no test.',
  remedy:
    'none for this season; next time use the same traps, fluid and interval everywhere, or mix them within every habitat',
  source:
    'diameter: Work et al. 2002; fluid and funnel: Knapp & Ruzicka 2012; fences: Brennan et al. 2005; interval: Holland & Reynolds 2005; the limits, less than half shared and 1.5 times the interval, are proposals of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'study.yaml': 'title: T\ntrap_types: {cup: {rim_diameter_mm: 75}, jar: {rim_diameter_mm: 90}}\n',
        'sites.csv': 'site_id,habitat\nW1,wood\nM1,meadow\n',
        'traps.csv': 'trap_id,site_id,trap_type\nW1-1,W1,cup\nM1-1,M1,jar\n'
      },
      findings: ['traps.csv:3:9: the trap type differs in line with habitat: wood cup; meadow jar']
    },
    {
      files: {
        'sites.csv': 'site_id,habitat\nW1,wood\nM1,meadow\n',
        'visits.csv':
          'trap_id,opened,collected,sample\nW1-1,2026-05-04,2026-05-18,sorted\nM1-1,2026-05-11,2026-05-18,empty\n'
      },
      findings: ['visits.csv:2:6: the interval differs in line with habitat: wood 14, meadow 7 nights']
    }
  ],
  *check(_study, index) {
    const {fieldwork} = index
    if (fieldwork.habitats.length < 2) return
    for (const {what, of, place} of traits(fieldwork, index)) {
      const apart = differing(fieldwork, of)
      if (apart === undefined) continue
      yield {place: place(apart.visit), message: `the ${what} differs in line with habitat: ${apart.detail}`}
    }
    const intervals = intervalsByHabitat(fieldwork)
    if (!areUnequal(intervals)) return
    const longest = Math.max(...intervals.values())
    const visit = fieldwork.visits.find(({at}) => intervals.get(at.site.habitat) === longest)!
    yield {
      place: index.place('visits', visit.exposure.row, 'opened'),
      message: `the interval differs in line with habitat: ${intervalWords(intervals)}`
    }
  }
} as const satisfies Rule

interface Trait {
  readonly what: string
  readonly of: (visit: Visit) => string | undefined
  readonly place: (visit: Visit) => Place
}

function traits({trapTypes}: Fieldwork, index: StudyIndex): readonly Trait[] {
  const trapCell = (column: string) => (visit: Visit) => index.place('traps', visit.at.trap.row, column)
  return [
    {what: 'trap type', of: ({at}) => at.trapType, place: trapCell('trap_type')},
    {
      what: 'cover',
      of: ({at}) => {
        const cover = trapTypes.get(at.trapType ?? '')?.cover
        return typeof cover === 'boolean' ? (cover ? 'covered' : 'not covered') : cover
      },
      place: trapCell('trap_type')
    },
    {what: 'fluid', of: ({fluid}) => fluid, place: trapCell('fluid')}
  ]
}

/** What the habitats have, and a visit of the first one that shares too little with one before it. */
function differing(
  {visits, habitats}: Fieldwork,
  of: Trait['of']
): {detail: string; visit: Visit} | undefined {
  const known = grouped(
    visits.filter((visit) => of(visit) !== undefined),
    ({at}) => at.site.habitat
  )
  const shares = habitats.flatMap((habitat) => {
    const own = known.get(habitat)
    return own === undefined ? [] : [{habitat, own, shares: sharesOf(own, of)}]
  })
  const at = shares.findIndex((one, position) =>
    shares.slice(0, position).some((earlier) => overlap(one.shares, earlier.shares) < leastOverlap)
  )
  const visit = shares[at]?.own[0]
  if (visit === undefined) return undefined
  const detail = shares
    .map(({habitat, shares: own}) => `${habitat} ${[...own.keys()].join(' and ')}`)
    .join('; ')
  return {detail, visit}
}

/** Share of visits with each value, the commonest first. */
function sharesOf(visits: readonly Visit[], of: Trait['of']): ReadonlyMap<string, number> {
  const groups = [...grouped(visits, of)].map(([value = '', own]): [string, number] => [
    value,
    own.length / visits.length
  ])
  return new Map(groups.sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)))
}

function overlap(first: ReadonlyMap<string, number>, second: ReadonlyMap<string, number>): number {
  let shared = 0
  for (const [value, share] of first) shared += Math.min(share, second.get(value) ?? 0)
  return shared
}
