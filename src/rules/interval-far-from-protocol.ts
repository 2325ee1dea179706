import {median} from '../statistics/median.ts'
import {fewOf} from './few-of.ts'
import {grouped} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

/** Ours, no source: the factor beyond which an interval is called far from the one planned. */
const farFactor = 1.5
/** More single cases than this are told as one. */
const mostGroups = 3

export const intervalFarFromProtocol = {
  code: 'interval-far-from-protocol',
  severity: 'caution',
  summary: 'traps were open much longer or shorter than the protocol says',
  why: 'Either a date is wrong, which changes the effort, or the interval was another one, which changes the catch of a night: traps emptied after 6 or 9 days caught more of one ground beetle a day than those emptied after 1 to 3.',
  remedy: 'check the dates in the field notes; if they are right, say why in `limitations`',
  source:
    'interval and catch: Holland & Reynolds 2005; the limit, 1.5 times longer or shorter, is a proposal of ours',
  examples: [
    {files: {'study.yaml': 'title: T\nprotocol: {interval_nights: 14}\n'}, findings: []},
    {
      files: {
        'study.yaml': 'title: T\nprotocol: {interval_nights: 14}\n',
        'visits.csv':
          'trap_id,opened,collected,sample\nW1-1,2026-05-04,2026-05-18,sorted\nW1-1,2026-05-18,2026-06-08,sorted\nW1-1,2026-06-08,2026-06-30,empty\nM1-1,2026-05-04,2026-05-18,empty\n'
      },
      findings: ['visits.csv:4:6: trap W1-1 was open for 22 nights; the protocol says 14']
    },
    {
      files: {'study.yaml': 'title: T\nprotocol: {interval_nights: 7}\n'},
      findings: [
        'study.yaml:2:29: 11 of 11 visits were open for far more or fewer nights than 7; their median is 14'
      ]
    }
  ],
  *check({settings, settingPlace}, index) {
    const planned = settings.protocol?.interval_nights
    if (planned === undefined) return
    const {visits} = index.fieldwork
    const far = visits.filter(({nights}) => nights > planned * farFactor || nights * farFactor < planned)
    if (far.length * 2 > visits.length) {
      const middle = median(far.map(({nights}) => nights))
      yield {
        place: settingPlace(['protocol', 'interval_nights']),
        message: `${far.length} of ${numberOf(visits.length, 'visit')} were open for far more or fewer nights than ${planned}; their median is ${'value' in middle ? written(middle.value) : ''}`
      }
      return
    }
    const groups = [...grouped(far, ({round, nights}) => `${round} ${nights}`).values()]
    if (groups.length > mostGroups) {
      const first = far[0]!
      yield {
        place: index.place('visits', first.exposure.row, 'opened'),
        message: `${far.length} of ${numberOf(visits.length, 'visit')} were open for far more or fewer nights than ${planned}, the first that of trap ${first.exposure.trapId} for ${written(first.nights)}`
      }
      return
    }
    for (const group of groups) {
      const first = group[0]!
      const who = fewOf(group.map(({exposure}) => exposure.trapId))
      yield {
        place: index.place('visits', first.exposure.row, 'opened'),
        message: `${group.length === 1 ? 'trap' : 'traps'} ${who} ${group.length === 1 ? 'was' : 'were'} open for ${written(first.nights)} ${first.nights === 1 ? 'night' : 'nights'}; the protocol says ${planned}`
      }
    }
  }
} as const satisfies Rule

function written(nights: number): string {
  return `${Number(nights.toFixed(1))}`
}
