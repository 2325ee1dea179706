import {isDefined, type Quantity} from '../model/quantity.ts'
import {coverage} from './coverage.ts'
import {expectedCoverage} from './coverage-at-size.ts'
import type {FrequencyCounts} from './frequency-counts.ts'

/** A sample under the name that a report gives it. */
export interface NamedSample {
  readonly name: string
  readonly sample: FrequencyCounts
}

/** The coverage at which samples can be compared, and which of them can. */
export interface CommonCoverage {
  readonly coverage: Quantity
  /** Names of the samples that take part. */
  readonly compared: readonly string[]
  /** The others; reason completes 'left out, because ...'. */
  readonly leftOut: readonly {readonly name: string; readonly reason: string}[]
}

/**
 * The coverage, 0 to 1, at which the diversity of several samples is compared: the largest that all of them reach.
 *
 * Formula: the smallest of the coverages at twice the reference sizes.
 *
 * Source: Chao & Jost 2012, Ecology 93:2533-2547; Chao et al. 2014, Ecol. Monogr. 84:45-67. Chao et al. also take
 * the larger of this and the best sample's own coverage, which other samples may not reach. The least coverage of
 * 0.5: common practice, no source.
 *
 * Edge cases: a sample whose coverage is below 0.5 or not defined is left out and named; fewer than two others leave
 * nothing to compare.
 *
 * @example commonCoverage([{name: 'wood', sample: frequencyCounts([4, 2, 1, 1])}, {name: 'meadow', sample: frequencyCounts([3, 3])}]).coverage // => {value: 0.92483550}
 * @example commonCoverage([{name: 'wood', sample: frequencyCounts([1])}]).leftOut // => [{name: 'wood', reason: 'its coverage is not defined: one individual says nothing about the species that were missed'}]
 */
export function commonCoverage(samples: readonly NamedSample[]): CommonCoverage {
  const compared: NamedSample[] = []
  const leftOut: {name: string; reason: string}[] = []
  for (const named of samples) {
    const reason = tooLittle(coverage(named.sample))
    if (reason === undefined) compared.push(named)
    else leftOut.push({name: named.name, reason})
  }
  const reachable = compared.map(({sample}) => expectedCoverage(sample, 2 * sample.size))
  return {
    coverage:
      compared.length < 2
        ? {notDefined: `fewer than two samples have a coverage of at least ${LEAST}`}
        : {value: Math.min(...reachable)},
    compared: compared.map(({name}) => name),
    leftOut
  }
}

const LEAST = 0.5

function tooLittle(own: Quantity): string | undefined {
  if (!isDefined(own)) return `its coverage is not defined: ${own.notDefined}`
  return own.value < LEAST ? `its coverage is ${own.value.toFixed(3)}, below ${LEAST}` : undefined
}
