import {median} from '../statistics/median.ts'
import {grouped} from './fieldwork.ts'
import {type FluidKind, fluidKind, isGlycol} from './fluid-kind.ts'
import type {Rule} from './rule.ts'

/** Nights after which any fluid is doubtful; official protocols leave glycol for one and two months. */
const longForAny = 16
const longForGlycol = 31

export const intervalTooLongForFluid = {
  code: 'interval-too-long-for-fluid',
  severity: 'note',
  summary: 'traps were left longer than their fluid keeps',
  why: 'When the fluid evaporates or spoils, animals rot, escape or draw others: counts fall for some kinds and rise for others.',
  remedy:
    'check the dates; if they are right, say so in `limitations`, and next time empty the traps sooner or use another fluid',
  source:
    'ethanol gone within 7 days: Aristophanous 2010; water with detergent for 72 hours: CAP LTER protocol 2016; two weeks: UK Environmental Change Network, NEON 2019; glycol for two months: Jornada LTER; the limits are proposals of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {'study.yaml': 'title: T\nfluids: {e: {substance: ethanol}}\n'},
      findings: [
        'study.yaml:2:13: traps with `e` were open for 14 nights (median): ethanol keeps for about 6'
      ]
    },
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,sample\nW1-1,2026-05-04,2026-05-24,sorted\nM1-1,2026-05-04,2026-05-24,empty\n'
      },
      findings: [
        'study.yaml:5:18: traps with `glycol` were open for 20 nights (median): the usual interval is up to 16'
      ]
    }
  ],
  *check({settingPlace}, index) {
    const {visits, fluids} = index.fieldwork
    for (const [id, own] of grouped(visits, ({fluid}) => fluid)) {
      const stated = fluids.get(id ?? '')
      const middle = median(own.map(({nights}) => nights))
      if (id === undefined || stated === undefined || !('value' in middle)) continue
      const kind = fluidKind(stated)
      const limit = limitOf(kind)
      if (middle.value <= Math.min(limit, longForAny)) continue
      const tooLong = middle.value > limit
      yield {
        place: settingPlace(['fluids', id]),
        message: `traps with \`${id}\` were open for ${Number(middle.value.toFixed(1))} nights (median): ${tooLong ? `${kind} keeps for about ${limit}` : `the usual interval is up to ${longForAny}`}`,
        severity: tooLong ? 'caution' : 'note'
      }
    }
  }
} as const satisfies Rule

function limitOf(kind: FluidKind | undefined): number {
  if (kind === 'ethanol') return 6
  if (kind === 'water') return 3
  return isGlycol(kind) ? longForGlycol : Number.POSITIVE_INFINITY
}
