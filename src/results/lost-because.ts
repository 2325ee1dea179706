import type {ConditionWord} from '../model/column-words.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import type {Part} from './parts.ts'
import type {ExposureInUse} from './season-records.ts'

/** What became of the traps, in plain words that complete 'lost, because ...'. */
const reasons: Readonly<Record<Exclude<ConditionWord, 'intact'>, string>> = {
  diluted: 'rain had diluted what was in traps',
  overflowed: 'traps were flooded',
  dry: 'traps had dried out',
  raised: 'the rim of a trap stood above the soil',
  disturbed: 'traps were dug up or disturbed',
  blocked: 'traps were blocked',
  spilled: 'what was in a trap was spilled',
  missing: 'traps were gone',
  closed: 'traps were closed'
}

/**
 * Why trap-nights that were planned do not count, those that cost most first: what was found at the traps, what
 * happened to samples afterwards, and nights on which no trap stood open.
 *
 * @param planned trap-nights planned for this part
 */
export function lostBecause({exposures}: Part, planned: number): string[] {
  const nights = new Map<string, number>()
  const lose = (reason: string, lost: number) => {
    if (lost > 0) nights.set(reason, (nights.get(reason) ?? 0) + lost)
  }
  let exposed = 0
  for (const exposure of exposures) {
    const {effort} = exposure
    exposed += effort.exposed ?? 0
    lose(reasonOf(exposure), (effort.exposed ?? 0) - effort.net - effort.unsorted)
  }
  lose('traps did not stand open as long as planned', planned - exposed)
  return [...nights]
    .sort(([a, most], [b, least]) => least - most || codeUnitOrder(a, b))
    .map(([reason]) => reason)
}

function reasonOf({record: {condition, sample}}: ExposureInUse): string {
  if (sample === 'lost') return 'a sample was lost after it had been collected'
  if (condition === 'intact') return 'nothing says what became of a sample'
  return Object.hasOwn(reasons, condition)
    ? reasons[condition as keyof typeof reasons]
    : `traps were found “${condition}”`
}
