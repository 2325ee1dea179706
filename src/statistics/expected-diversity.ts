import {absenceProbabilities} from './absence-probability.ts'
import {expectedEntropy} from './expected-entropy.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {estimatedSimpson} from './hill-asymptotic.ts'
import {hillNumber} from './hill-observed.ts'
import {estimatedEntropy} from './shannon-asymptotic.ts'
import {undetectedSpecies} from './undetected-species.ts'

/** Orders of diversity that can be rarefied and extrapolated. */
export type RarefiableOrder = 0 | 1 | 2

/**
 * The formulas of rarefactionAndExtrapolation without its guards: a number for every size above 0 and every sample
 * that is not empty. Between whole sizes up to the reference size it is linear; a size below 1 counts as 1.
 */
export function expectedDiversity(sample: FrequencyCounts, order: RarefiableOrder, size: number): number {
  if (size > sample.size) return extrapolated(sample, order, size)
  const whole = Math.max(1, Math.floor(size))
  const below = rarefied(sample, order, whole)
  return size > whole ? below + (size - whole) * (rarefied(sample, order, whole + 1) - below) : below
}

function rarefied(sample: FrequencyCounts, order: RarefiableOrder, m: number): number {
  if (m === sample.size) return hillNumber(sample, order)
  if (order === 1) return Math.exp(expectedEntropy(sample, m))
  if (order === 2) return simpsonAt(sample, m)
  const absence = absenceProbabilities(sample.size, m)
  return sample.classes.reduce((sum, {count, species}) => sum + species * (1 - absence(count)), 0)
}

function extrapolated(sample: FrequencyCounts, order: RarefiableOrder, m: number): number {
  if (m === Number.POSITIVE_INFINITY) return limit(sample, order)
  if (order === 2) return simpsonAt(sample, m)
  const more = m - sample.size
  if (order === 1) {
    const {logOfObserved} = sumsOf(sample)
    return Math.exp((sample.size / m) * logOfObserved + (more / m) * estimatedEntropy(sample))
  }
  const unseen = undetectedSpecies(sample)
  if (unseen === 0) return sample.species
  const rate = Math.log1p(-sample.singletons / (sample.size * unseen + sample.singletons))
  return sample.species - unseen * Math.expm1(more * rate)
}

/** The asymptotic estimates. */
function limit(sample: FrequencyCounts, order: RarefiableOrder): number {
  if (order === 0) return sample.species + undetectedSpecies(sample)
  return order === 1 ? Math.exp(estimatedEntropy(sample)) : estimatedSimpson(sample)
}

function simpsonAt(sample: FrequencyCounts, m: number): number {
  const {records, size} = sample
  if (size === 1) return records * m
  const {pairs} = sumsOf(sample)
  return 1 / (size / (m * records) + ((m - 1) / m) * (pairs / (records ** 2 * (1 - 1 / size))))
}

interface Sums {
  readonly sample: FrequencyCounts
  /** Natural logarithm of the observed diversity of order 1. */
  readonly logOfObserved: number
  /** Sum of X. */
  readonly pairs: number
}

// A curve asks for the sums of one sample at every size; a map would keep the thousands of a bootstrap.
let latest: Sums | undefined

function sumsOf(sample: FrequencyCounts): Sums {
  if (latest?.sample === sample) return latest
  latest = {
    sample,
    logOfObserved: Math.log(hillNumber(sample, 1)),
    pairs: sample.classes.reduce((sum, {count, species}) => sum + species * count * (count - 1), 0)
  }
  return latest
}
