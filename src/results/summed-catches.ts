import type {RecordedName} from './recorded-names.ts'
import type {UnitKind} from './sampling-units.ts'
import type {CatchInUse} from './season-records.ts'

type Sum = {-readonly [Key in keyof CatchInUse]: CatchInUse[Key]}

/**
 * Catches summed over rounds, sexes and, where sites are the sampling units, traps: all that the numbers of a site,
 * a habitat or the study need, in far fewer items than a season has rows.
 */
export function summedCatches(catches: readonly CatchInUse[], kind: UnitKind): readonly CatchInUse[] {
  const stages = new Map<string, number>()
  const fractions = new Map<number, number>()
  const sums = new Map<RecordedName, Map<number, Map<number, Sum>>>()
  for (const each of catches) {
    const trap = kind === 'trap' ? each.trap : undefined
    const unit = trap === undefined ? -1 - each.site.index : trap.index
    const stage = numberIn(stages, each.lifeStage)
    const details = (numberIn(fractions, each.fraction) * 1000 + stage) * 8 + standingOf(each)
    const ofUnit = innerMap(innerMap(sums, each.name), unit)
    const sum = ofUnit.get(details)
    if (sum === undefined) ofUnit.set(details, {...each, trap, sex: undefined, round: undefined})
    else sum.count += each.count
  }
  return [...sums.values()].flatMap((units) => [...units.values()].flatMap((ofUnit) => [...ofUnit.values()]))
}

function innerMap<Key, InnerKey, Value>(
  maps: Map<Key, Map<InnerKey, Value>>,
  key: Key
): Map<InnerKey, Value> {
  let inner = maps.get(key)
  if (inner === undefined) {
    inner = new Map()
    maps.set(key, inner)
  }
  return inner
}

/** The number of a value in the order of first sight. */
function numberIn<Value>(seen: Map<Value, number>, value: Value): number {
  let number = seen.get(value)
  if (number === undefined) {
    number = seen.size
    seen.set(value, number)
  }
  return number
}

function standingOf({inRates, inRatesWithCredit, inRatesWithoutCredit}: CatchInUse): number {
  return (inRates ? 1 : 0) + (inRatesWithCredit ? 2 : 0) + (inRatesWithoutCredit ? 4 : 0)
}
