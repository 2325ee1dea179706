import type {Measure} from '../model/quantity.ts'
import {ratioRate} from '../statistics/ratio-rate.ts'
import {words} from './counted.ts'
import {raisedCount, sortedCount, type UnitCatches, type UnitEffort} from './sampling-units.ts'

const per = 100

/**
 * Activity-density: individuals per 100 trap-nights, raised to whole samples, with its range between sampling
 * units. With one unit or no catch the range is that of the animals counted over the effort that was sorted.
 */
export function activityDensity(
  label: string,
  catches: UnitCatches,
  units: ReadonlyMap<number, UnitEffort>,
  confidence: number
): Measure {
  return rate({label, kind: 'rate', unit: words.perHundred}, catches, units, confidence, ({net}) => net)
}

/** The same per metre of rim. It does not remove the effect of trap size (Work et al. 2002, Environ. Entomol. 31:438-448). */
export function rimActivityDensity(
  label: string,
  catches: UnitCatches,
  units: ReadonlyMap<number, UnitEffort>,
  confidence: number
): Measure {
  const what = {label, kind: 'rate', unit: words.perMetreOfRim} as const
  for (const {rimMetreNights} of units.values()) {
    if (rimMetreNights === undefined) return {...what, notDefined: 'the rim of some traps is not known'}
  }
  return rate(what, catches, units, confidence, ({rimMetreNights}) => rimMetreNights!)
}

function rate(
  what: Pick<Measure, 'label' | 'kind' | 'unit'>,
  catches: UnitCatches,
  units: ReadonlyMap<number, UnitEffort>,
  confidence: number,
  effortOf: (unit: UnitEffort) => number
): Measure {
  const options = {confidence, per}
  const efforts = [...units.values()].map(effortOf)
  const effort = efforts.reduce((sum, each) => sum + each, 0)
  if (effort === 0) return {...what, notDefined: 'no trap-nights count here'}
  const sorted = [...units.keys()].map((unit) => sortedCount(catches.get(unit)))
  const raised = [...units.keys()].map((unit) => raisedCount(catches.get(unit)))
  const count = sorted.reduce((sum, each) => sum + each, 0)
  if (count === 0) {
    const part = [...units.values()].reduce(
      (sum, unit) => sum + (effortOf(unit) * unit.sortedNet) / unit.net,
      0
    )
    return {...what, ...ratioRate([{count, effort: part}], options)}
  }
  if (units.size === 1)
    return {...what, ...ratioRate([{count, effort: (effort * count) / raised[0]!}], options)}
  const counted = efforts.map((each, index) => ({count: raised[index]!, effort: each}))
  return {...what, ...ratioRate(counted, options)}
}
