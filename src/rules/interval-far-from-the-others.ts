import {median} from '../statistics/median.ts'
import {fewOf} from './few-of.ts'
import {grouped} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

/** Ours, no source: a slip in the month or year of a date makes an interval longer than so many usual ones. */
const farFactor = 4
/** Of fewer visits none is usual. */
const fewestVisits = 4
/** More single cases than this are told as one. */
const mostGroups = 3

export const intervalFarFromTheOthers = {
  code: 'interval-far-from-the-others',
  severity: 'caution',
  summary: 'a trap was open many times longer or shorter than the others, and no protocol says why',
  why: 'If a date is wrong, the effort of its site is wrong by all of these nights, and so is every rate.',
  remedy:
    'check the dates in the field notes, the year too; if they are right, say why in `limitations`, and what was planned in `protocol.interval_nights`',
  source:
    'the limit, four times the median or a quarter of it, is a proposal of ours; common practice, no source',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'study.yaml':
          "title: T\nseason: {start: 2026-05-01, end: 2027-06-30}\ntrap_types: {cup: {}}\nfluids: {glycol: {substance: propylene glycol, dilution: '1:1'}}\n",
        'visits.csv':
          'trap_id,opened,collected,sample\nW1-1,2026-05-04,2027-05-18,empty\nW1-2,2026-05-04,2026-05-18,empty\nM1-1,2026-05-04,2026-05-18,empty\nM1-2,2026-05-04,2026-05-18,empty\n',
        'catch.csv': 'trap_id,collected,taxon,count\n'
      },
      findings: ['visits.csv:2:6: trap W1-1 was open for 379 nights; half of the 4 visits for 14 or less']
    }
  ],
  *check({settings, effortBySite}, index) {
    if (settings.protocol?.interval_nights !== undefined || effortBySite) return
    const {visits} = index.fieldwork
    if (visits.length < fewestVisits) return
    const middle = median(visits.map(({nights}) => nights))
    if (!('value' in middle)) return
    const usual = middle.value
    const far = visits.filter(({nights}) => nights > usual * farFactor || nights * farFactor < usual)
    const groups = [...grouped(far, ({round, nights}) => `${round} ${nights}`).values()]
    const shown = groups.slice(0, mostGroups)
    for (const [at, group] of shown.entries()) {
      const first = group[0]!
      const who = fewOf(group.map(({exposure}) => exposure.trapId))
      const isLast = at === mostGroups - 1 && groups.length > mostGroups
      const more = far.length - shown.reduce((sum, {length}) => sum + length, 0)
      yield {
        place: index.place('visits', first.exposure.row, 'opened'),
        message: `${group.length === 1 ? 'trap' : 'traps'} ${who} ${group.length === 1 ? 'was' : 'were'} open for ${nightsInWords(first.nights)}; half of the ${numberOf(visits.length, 'visit')} for ${written(usual)} or less${isLast ? ` (and ${numberOf(more, 'visit')} more like that)` : ''}`
      }
    }
  }
} as const satisfies Rule

function nightsInWords(nights: number): string {
  return `${written(nights)} ${nights === 1 ? 'night' : 'nights'}`
}

function written(nights: number): string {
  return `${Number(nights.toFixed(1))}`
}
