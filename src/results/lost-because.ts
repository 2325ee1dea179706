import type {ConditionWord} from '../model/column-words.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {nightsLost} from './exposure-effort.ts'
import type {Part} from './parts.ts'
import type {ExposureInUse} from './season-records.ts'

/** What became of a trap, or of several, in plain words that complete 'lost, because ...'. */
type Reason = readonly [one: string, many: string]

const reasons: Readonly<Record<Exclude<ConditionWord, 'intact' | 'closed'>, Reason>> = {
  diluted: ['rain had diluted what was in a trap', 'rain had diluted what was in traps'],
  overflowed: ['a trap was flooded', 'traps were flooded'],
  dry: ['a trap had dried out', 'traps had dried out'],
  raised: ['the rim of a trap stood above the soil', 'the rims of traps stood above the soil'],
  disturbed: ['a trap was dug up or disturbed', 'traps were dug up or disturbed'],
  blocked: ['a trap was blocked', 'traps were blocked'],
  spilled: ['what was in a trap was spilled', 'what was in traps was spilled'],
  missing: ['a trap was gone', 'traps were gone']
}

const sampleLost: Reason = ['a sample was lost later on', 'samples were lost later on']
const untold: Reason = ['nothing says what became of a sample', 'nothing says what became of some samples']
const notOpen = 'traps did not stand open as long as planned'

/**
 * Why trap-nights that were planned do not count, those that cost most first: what was found at the traps, what
 * happened to samples afterwards, and nights on which no trap stood open.
 *
 * @param planned trap-nights planned for this part
 */
export function lostBecause({exposures}: Part, planned: number): string[] {
  const losses = new Map<string, {readonly reason: Reason; nights: number; times: number}>()
  let exposed = 0
  for (const exposure of exposures) {
    exposed += exposure.effort.exposed ?? 0
    const nights = nightsLost(exposure.effort)
    if (nights <= 0) continue
    const reason = reasonOf(exposure)
    const loss = losses.get(reason[0]) ?? {reason, nights: 0, times: 0}
    losses.set(reason[0], {reason, nights: loss.nights + nights, times: loss.times + 1})
  }
  const told = [...losses.values()].map(({reason: [one, many], nights, times}) => ({
    words: times === 1 ? one : many,
    nights
  }))
  if (planned > exposed) told.push({words: notOpen, nights: planned - exposed})
  return told.sort((a, b) => b.nights - a.nights || codeUnitOrder(a.words, b.words)).map(({words}) => words)
}

function reasonOf({record: {condition, sample}}: ExposureInUse): Reason {
  // Of a trap that was gone there was no sample that could have been lost.
  if (sample === 'lost' && condition !== 'missing' && condition !== 'spilled') return sampleLost
  if (condition === 'intact') return untold
  return Object.hasOwn(reasons, condition)
    ? reasons[condition as keyof typeof reasons]
    : [`a trap was found “${condition}”`, `traps were found “${condition}”`]
}
