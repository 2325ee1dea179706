import {coverageNotDefined, estimatedCoverage} from './coverage.ts'
import type {FrequencyCounts} from './frequency-counts.ts'
import {undetectedSpecies} from './undetected-species.ts'

/**
 * The estimated assemblage of Chao et al. 2014, Ecol. Monogr. 84:45-67, appendix G: every species seen, with its
 * share (of an individual draw, or of a sampling unit) made smaller to leave room for the species not seen, and these,
 * f0 rounded up, with equal shares.
 *
 * Formula: p = X/n (1 - l (1 - X/n)^n), l = (1-C) / sum X/n (1 - X/n)^n; unseen (1-C)/f0 each. Incidences: Y/T for
 * X/n, (U/T)(1-C) for 1-C. Nothing unseen: p = X/n.
 */
export interface Assemblage {
  readonly kind: FrequencyCounts['kind']
  readonly size: number
  readonly seen: readonly number[]
  readonly unseenSpecies: number
  readonly unseenEach: number
}

/** The assemblage, or nothing where coverage is not defined. */
export function estimatedAssemblage(sample: FrequencyCounts): Assemblage | undefined {
  if (coverageNotDefined(sample) !== undefined) return undefined
  const {kind, records, size} = sample
  const unseenSpecies = Math.ceil(undetectedSpecies(sample))
  const deficit = unseenSpecies === 0 ? 0 : (records / size) * (1 - estimatedCoverage(sample))
  let missed = 0
  for (const {count, species} of sample.classes)
    missed += species * (count / size) * (1 - count / size) ** size
  const adjustment = deficit === 0 ? 0 : deficit / missed
  const seen = sample.classes.flatMap(({count, species}) => {
    const share = count / size
    return new Array<number>(species).fill(share * (1 - adjustment * (1 - share) ** size))
  })
  return {kind, size, seen, unseenSpecies, unseenEach: unseenSpecies === 0 ? 0 : deficit / unseenSpecies}
}
