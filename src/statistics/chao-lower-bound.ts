import type {Quantity} from '../model/quantity.ts'
import {logNormalAboveSeen} from './confidence-interval.ts'
import {emptyReason, type FrequencyCounts} from './frequency-counts.ts'
import {undetectedSpecies} from './undetected-species.ts'

/** What chao1 and chao2 share: estimate, standard error, interval, and the caution on what it rests on. */
export function chaoLowerBound(sample: FrequencyCounts, confidence?: number): Quantity {
  if (sample.records === 0) return {notDefined: emptyReason(sample.kind)}
  const value = sample.species + undetectedSpecies(sample)
  const variance = varianceOf(sample, value)
  const caution = restsOn(sample, value)
  return {
    value,
    standardError: Math.sqrt(variance),
    interval: logNormalAboveSeen(sample.species, value, variance, confidence),
    ...(caution === undefined ? {} : {caution})
  }
}

/** Chao 1987; with r = f1/f2: f2 (k r^2/2 + k^2 r^3 + k^2 r^4/4), and its form where f2 = 0. */
function varianceOf({size, singletons, doubletons}: FrequencyCounts, estimate: number): number {
  const k = (size - 1) / size
  if (doubletons > 0) {
    const r = singletons / doubletons
    return doubletons * ((k * r ** 2) / 2 + k ** 2 * r ** 3 + (k ** 2 * r ** 4) / 4)
  }
  return Math.max(
    0,
    (k * singletons * (singletons - 1)) / 2 +
      (k ** 2 * singletons * (2 * singletons - 1) ** 2) / 4 -
      (k ** 2 * singletons ** 4) / (4 * estimate)
  )
}

const FEW = 5

function restsOn(sample: FrequencyCounts, value: number): string | undefined {
  // Without singletons nothing is added to the species seen, so nothing rests on the doubletons.
  if (sample.doubletons >= FEW || sample.singletons === 0) return undefined
  const more: FrequencyCounts = {
    ...sample,
    // Two more individuals; two more incidences are in the units that there are.
    size: sample.kind === 'abundance' ? sample.size + 2 : sample.size,
    doubletons: sample.doubletons + 1
  }
  const printed = (estimate: number) => Number(estimate.toPrecision(3))
  const estimate = printed(sample.species + 1 + undetectedSpecies(more))
  const where = sample.kind === 'abundance' ? 'caught twice' : 'found in exactly two sampling units'
  const few = `rests on ${sample.doubletons === 0 ? 'no' : sample.doubletons} species ${where}`
  return estimate === printed(value) ? few : `${few}; one more such species would make it ${estimate}`
}
