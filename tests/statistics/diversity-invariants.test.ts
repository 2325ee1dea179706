import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {coverageAtSize, expectedCoverage} from '../../src/statistics/coverage-at-size.ts'
import {expectedDiversity} from '../../src/statistics/expected-diversity.ts'
import {frequencyCounts, incidenceCounts} from '../../src/statistics/frequency-counts.ts'
import {giniSimpsonUnbiased} from '../../src/statistics/gini-simpson-unbiased.ts'
import {hillAsymptotic} from '../../src/statistics/hill-asymptotic.ts'
import {hillNumber} from '../../src/statistics/hill-observed.ts'
import {rarefactionAndExtrapolation} from '../../src/statistics/rarefaction-and-extrapolation.ts'
import {sizeForCoverage} from '../../src/statistics/size-for-coverage.ts'
import {exactCoverage, exactHill} from './exact-rarefaction.ts'
import {numberOf} from './number-of.ts'

const catches = fc.array(fc.oneof(fc.integer({min: 1, max: 4}), fc.integer({min: 1, max: 40})), {
  minLength: 1,
  maxLength: 15
})
const occurrences = fc
  .integer({min: 2, max: 30})
  .chain((units) =>
    fc.tuple(fc.array(fc.integer({min: 1, max: units}), {minLength: 1, maxLength: 15}), fc.constant(units))
  )
const orders = [0, 1, 2] as const

/** Equal but for rounding. */
const near = (a: number, b: number, tolerance = 1e-11) =>
  Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(b))

function property<T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => boolean) {
  fc.assert(fc.property(arbitrary, holds), {seed: 20_260_531, numRuns: 200})
}

describe('rarefaction', () => {
  test('expects one species of one individual and all species of the whole catch', () => {
    property(catches, (counts) => {
      const sample = frequencyCounts(counts)
      return (
        orders.every((order) => near(expectedDiversity(sample, order, 1), 1)) &&
        orders.every((order) => expectedDiversity(sample, order, sample.size) === hillNumber(sample, order))
      )
    })
  })

  test('expects of two individuals one species more than the unbiased Gini-Simpson index', () => {
    property(catches, (counts) => {
      const sample = frequencyCounts(counts)
      if (sample.size < 2) return true
      return near(
        numberOf(rarefactionAndExtrapolation(sample, 0, 2)),
        1 + numberOf(giniSimpsonUnbiased(sample))
      )
    })
  })

  test('agrees with whole-number binomial coefficients at every size and order', () => {
    property(fc.tuple(catches, fc.double({min: 0, max: 1, noNaN: true})), ([counts, at]) => {
      const sample = frequencyCounts(counts)
      const size = 1 + Math.round(at * (sample.size - 1))
      return orders.every((order) =>
        near(expectedDiversity(sample, order, size), exactHill(counts, sample.size, order, size))
      )
    })
  })

  test('of occurrences agrees with whole-number binomial coefficients at every size and order', () => {
    property(fc.tuple(occurrences, fc.double({min: 0, max: 1, noNaN: true})), ([[counts, units], at]) => {
      const sample = incidenceCounts(counts, units)
      const size = 1 + Math.round(at * (units - 1))
      return orders.every((order) =>
        near(expectedDiversity(sample, order, size), exactHill(counts, units, order, size))
      )
    })
  })

  test('never decreases with size, across the reference size too', () => {
    property(fc.tuple(catches, fc.double({min: 0.01, max: 1.9, noNaN: true})), ([counts, at]) => {
      const sample = frequencyCounts(counts)
      const {q0} = hillAsymptotic(sample)
      // Where estimates cross, order 1 may fall towards an estimate below what was observed.
      if ('notDefined' in q0) return true
      const size = at * sample.size
      return ([0, 2] as const).every(
        (order) =>
          expectedDiversity(sample, order, size + sample.size / 10) >=
          expectedDiversity(sample, order, size) * (1 - 1e-12)
      )
    })
  })
})

describe('coverage at a size', () => {
  test('agrees with whole-number binomial coefficients below the reference size', () => {
    property(fc.tuple(catches, fc.double({min: 0, max: 1, noNaN: true})), ([counts, at]) => {
      const sample = frequencyCounts(counts)
      const size = Math.floor(at * (sample.size - 1))
      return near(expectedCoverage(sample, size), exactCoverage(counts, sample.size, size))
    })
  })

  test('of occurrences agrees with whole-number binomial coefficients below the reference size', () => {
    property(fc.tuple(occurrences, fc.double({min: 0, max: 1, noNaN: true})), ([[counts, units], at]) => {
      const sample = incidenceCounts(counts, units)
      const size = Math.floor(at * (units - 1))
      return near(expectedCoverage(sample, size), exactCoverage(counts, units, size))
    })
  })

  test('never decreases with size', () => {
    property(fc.tuple(catches, fc.double({min: 0, max: 3, noNaN: true})), ([counts, at]) => {
      const sample = frequencyCounts(counts)
      const size = at * sample.size
      return expectedCoverage(sample, size + 0.5) >= expectedCoverage(sample, size) - 1e-12
    })
  })

  test('is undone by the size for that coverage', () => {
    property(fc.tuple(catches, fc.double({min: 0.05, max: 0.995, noNaN: true})), ([counts, target]) => {
      const size = sizeForCoverage(frequencyCounts(counts), target)
      if ('notDefined' in size) return true
      return near(numberOf(coverageAtSize(frequencyCounts(counts), size.value)), target, 1e-9)
    })
  })

  test('of occurrences is undone by the size for that coverage', () => {
    property(
      fc.tuple(occurrences, fc.double({min: 0.05, max: 0.995, noNaN: true})),
      ([[counts, units], target]) => {
        const sample = incidenceCounts(counts, units)
        const size = sizeForCoverage(sample, target)
        if ('notDefined' in size) return true
        return near(numberOf(coverageAtSize(sample, size.value)), target, 1e-9)
      }
    )
  })
})

describe('Hill numbers', () => {
  const order = fc.double({min: 0, max: 5, noNaN: true})

  test('never increase with their order', () => {
    property(fc.tuple(catches, order, order), ([counts, a, b]) => {
      const sample = frequencyCounts(counts)
      return hillNumber(sample, Math.max(a, b)) <= hillNumber(sample, Math.min(a, b)) * (1 + 1e-12)
    })
  })

  test('rarefied to any size never increase with their order', () => {
    property(fc.tuple(catches, fc.double({min: 0, max: 1, noNaN: true})), ([counts, at]) => {
      const sample = frequencyCounts(counts)
      const [q0, q1, q2] = orders.map((q) => expectedDiversity(sample, q, Math.max(1, at * sample.size)))
      return q0! >= q1! * (1 - 1e-12) && q1! >= q2! * (1 - 1e-12)
    })
  })

  test('all equal the number of species where these are equally common', () => {
    property(
      fc.tuple(fc.integer({min: 1, max: 50}), fc.integer({min: 1, max: 99}), order),
      ([species, count, q]) =>
        near(hillNumber(frequencyCounts(new Array<number>(species).fill(count)), q), species)
    )
  })

  test('double where every species is split into twins', () => {
    property(fc.tuple(catches, order), ([counts, q]) =>
      near(hillNumber(frequencyCounts([...counts, ...counts]), q), 2 * hillNumber(frequencyCounts(counts), q))
    )
  })

  test('have no break at order 1', () => {
    property(catches, (counts) => {
      const sample = frequencyCounts(counts)
      return near(hillNumber(sample, 1 + 1e-13), hillNumber(sample, 1))
    })
  })
})

test('a species that was never caught and the order of species change nothing', () => {
  property(catches, (counts) => {
    const sample = frequencyCounts(counts)
    expect(frequencyCounts([0, ...counts, 0])).toEqual(sample)
    expect(frequencyCounts(counts.toReversed())).toEqual(sample)
    return true
  })
})
