import {isDefined, type Measure} from '../model/quantity.ts'
import type {HabitatResult, SensitivityResult} from '../model/results.ts'
import {activityDensity} from './activity-density.ts'
import type {Analysis} from './analysis.ts'
import {counted, trapNights, words} from './counted.ts'
import {netWithCredit} from './exposure-effort.ts'
import type {Part, Parts} from './parts.ts'
import {addToUnit, type UnitCatches, unitEfforts} from './sampling-units.ts'
import type {CatchInUse} from './season-records.ts'

/** What failures of unknown date, from which animals were recovered, earn in place of the declared credit. */
const variants = [
  {id: 'declared', label: 'credits of this study', credit: undefined},
  {id: 'half', label: 'half credit', credit: 0.5},
  {id: 'full', label: 'full credit', credit: 1},
  {id: 'without', label: 'failed samples and their effort left out', credit: 0}
] as const

/** Percentage points, as a share, from which a difference in loss is worth a caution. Common practice, no source. */
const notableDifference = 0.1

/** How much the headline rates hang on the credit rule, and whether habitats lost effort unequally. */
export function sensitivityResult(
  analysis: Analysis,
  parts: Parts,
  habitats: readonly HabitatResult[]
): Omit<SensitivityResult, 'setAside'> {
  const lost = habitats.flatMap(({label, effort: {shareLost}}) => {
    return isDefined(shareLost) ? [{label, value: shareLost.value}] : []
  })
  const byLoss = lost.sort((a, b) => a.value - b.value)
  const [least, most] = [byLoss[0], byLoss.at(-1)]
  const difference = least === undefined || most === undefined ? 0 : most.value - least.value
  const share = (what: string, found: {label: string; value: number} | undefined): Measure => {
    if (found === undefined) return {label: what, kind: 'share', notDefined: 'no trap-nights were planned'}
    return {label: `${what}, ${found.label}`, kind: 'share', value: found.value}
  }
  return {
    variants: variants.map(({id, label, credit}) => ({
      id,
      label,
      habitats: analysis.area.habitats.map((habitat) => {
        const part = parts.ofHabitat(habitat)
        return {id: habitat.id, label: habitat.label, ...variantOf(part, analysis, credit, label)}
      })
    })),
    smallestShareLost: share('Smallest share of planned trap-nights lost', least),
    largestShareLost: share('Largest share of planned trap-nights lost', most),
    differenceInShareLost:
      lost.length < 2
        ? {
            label: 'Difference in the share lost',
            kind: 'share',
            notDefined: 'there are fewer than two habitats'
          }
        : {label: 'Difference in the share lost between habitats', kind: 'share', value: difference},
    lossDiffers: difference > notableDifference
  }
}

function variantOf(
  part: Part,
  {unit, confidence}: Analysis,
  credit: number | undefined,
  label: string
): Pick<SensitivityResult['variants'][number]['habitats'][number], 'net' | 'individuals' | 'rate'> {
  const exposures = part.exposures.map((exposure) => {
    const {effort} = exposure
    return credit === undefined
      ? exposure
      : {...exposure, effort: {...effort, net: netWithCredit(effort, credit)}}
  })
  const counts = (each: CatchInUse): boolean => {
    if (credit === undefined) return each.inRates
    return credit > 0 ? each.inRatesWithCredit : each.inRatesWithoutCredit
  }
  const caught: UnitCatches = new Map()
  let individuals = 0
  for (const each of part.catches) {
    if (!counts(each)) continue
    individuals += each.count
    addToUnit(caught, each, unit)
  }
  const net = exposures.reduce((sum, {effort}) => sum + effort.net, 0)
  const where = `${part.where}, ${label}`
  return {
    net: trapNights(`Trap-nights that count, ${where}`, net),
    individuals: counted(`Individuals in the rates, ${where}`, individuals, words.individuals),
    rate: activityDensity(`Activity-density, ${where}`, caught, unitEfforts(exposures, unit), confidence)
  }
}
