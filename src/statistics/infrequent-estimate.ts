import type {FrequencyCounts} from './frequency-counts.ts'

/** What ACE and ICE make of the species with a count up to the cut. */
export interface InfrequentEstimate {
  readonly value: number
  readonly variance: number
}

/**
 * The coverage-based estimate of species number that ACE and ICE share, for a sample in which not every infrequent
 * record is a singleton.
 *
 * Formula: S_frequent + R/C + (f1/C) g, R the infrequent species, N their records, C = 1 - f1/N,
 * g = max(0, (R/C) pairs sum k (k-1) f_k - 1); pairs is 1/(N(N-1)) for ACE and (m/(m-1))/N^2 for ICE. Variance by the
 * delta method: sum f_k d_k^2 - (sum f_k d_k)^2 / estimate, d_k the derivative of the estimate by f_k.
 *
 * Source: Chao & Lee 1992, J. Am. Stat. Assoc. 87:210-217; Lee & Chao 1994, Biometrics 50:88-97.
 */
export function infrequentEstimate(
  sample: FrequencyCounts,
  cut: number,
  unitsHolding?: number
): InfrequentEstimate {
  const infrequent = sample.classes.filter(({count}) => count <= cut)
  const sum = (term: (k: number) => number) =>
    infrequent.reduce((total, c) => total + c.species * term(c.count), 0)
  const species = sum(() => 1)
  const records = sum((k) => k)
  if (species === 0) return {value: sample.species, variance: 0}
  const singletons = sample.singletons
  const covered = 1 - singletons / records
  const clumps = sum((k) => k * (k - 1))
  const [pairs, pairsSlope] = pairing(records, unitsHolding)
  const raw = (species / covered) * pairs * clumps - 1
  // Rounding must not decide whether an assemblage at the edge counts as even.
  const variation = Math.abs(raw) < 1e-12 ? 0 : raw
  const spread = Math.max(0, variation)
  const value = sample.species - species + species / covered + (singletons / covered) * spread

  const derivative = (k: number) => {
    const isSingleton = k === 1 ? 1 : 0
    const coveredSlope = (singletons * k) / records ** 2 - isSingleton / records
    const spreadSlope =
      variation > 0
        ? (variation + 1) *
          (1 / species - coveredSlope / covered + (k * pairsSlope) / pairs + (k * (k - 1)) / clumps)
        : 0
    return (
      1 / covered -
      (species * coveredSlope) / covered ** 2 +
      spread * (isSingleton / covered - (singletons * coveredSlope) / covered ** 2) +
      (singletons / covered) * spreadSlope
    )
  }
  const frequent = sample.species - species
  const squares = frequent + sum((k) => derivative(k) ** 2)
  const total = frequent + sum(derivative)
  return {value, variance: Math.max(0, squares - total ** 2 / value)}
}

/** Whether every record of an infrequent species is a singleton, so that their coverage is 0. */
export function onlySingletons(sample: FrequencyCounts, cut: number): boolean {
  return sample.singletons > 0 && !sample.classes.some(({count}) => count > 1 && count <= cut)
}

/** The factor of the sum of k (k-1) f_k and its derivative by the number of records. */
function pairing(records: number, unitsHolding: number | undefined): [factor: number, slope: number] {
  if (unitsHolding !== undefined) {
    const factor = unitsHolding / (unitsHolding - 1) / records ** 2
    return [factor, (-2 * factor) / records]
  }
  const pairs = records * (records - 1)
  return [1 / pairs, -(2 * records - 1) / pairs ** 2]
}
