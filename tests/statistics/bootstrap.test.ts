import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {bootstrapReplicates} from '../../src/statistics/bootstrap-replicates.ts'
import {bootstrapStandardErrors} from '../../src/statistics/bootstrap-standard-errors.ts'
import {commonCoverage} from '../../src/statistics/common-coverage.ts'
import {coverageAtSize} from '../../src/statistics/coverage-at-size.ts'
import {curveSizes} from '../../src/statistics/curve-sizes.ts'
import {coverageStatistics, diversityAtCoverage} from '../../src/statistics/diversity-at-coverage.ts'
import {curveStatistics, diversityCurve} from '../../src/statistics/diversity-curve.ts'
import {drawSample} from '../../src/statistics/draw-sample.ts'
import {estimatedAssemblage} from '../../src/statistics/estimated-assemblage.ts'
import {frequencyCounts, incidenceCounts} from '../../src/statistics/frequency-counts.ts'
import {
  asymptoticStatistics,
  hillAsymptoticIntervals
} from '../../src/statistics/hill-asymptotic-intervals.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {numberOf} from './number-of.ts'
import {girdled, logged} from './spider-demonstration-set.ts'

const GIRDLED = frequencyCounts(girdled)
const LOGGED = frequencyCounts(logged)
const UNITS = incidenceCounts([1, 1, 1, 1, 2, 2, 3, 5, 8, 12], 12)

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

describe('the estimated assemblage', () => {
  test('of individuals has shares that sum to one, the unseen ones to the coverage deficit', () => {
    const {seen, unseenEach, unseenSpecies} = estimatedAssemblage(GIRDLED)!
    expect(unseenSpecies).toBe(18) // 17.893 rounded up
    expect(unseenEach * unseenSpecies).toBeCloseTo(1 - 0.92886, 5)
    expect(sum(seen) + unseenEach * unseenSpecies).toBeCloseTo(1, 14)
  })

  test('of incidences has rates that sum to U/T, the unseen ones to U/T of the coverage deficit', () => {
    const {seen, unseenEach, unseenSpecies} = estimatedAssemblage(UNITS)!
    // Q1 4, Q2 2, T 12, U 36: Q0 = (11/12) 16/4 = 3.67; A = 4/48; 1 - C = (4/36)(44/48).
    expect(unseenSpecies).toBe(4)
    expect(unseenEach * unseenSpecies).toBeCloseTo((36 / 12) * (4 / 36) * (44 / 48), 14)
    expect(sum(seen) + unseenEach * unseenSpecies).toBeCloseTo(36 / 12, 14)
  })

  test('without unseen species keeps the observed shares', () => {
    expect(estimatedAssemblage(frequencyCounts([6, 3, 3]))).toMatchObject({
      seen: [0.25, 0.25, 0.5],
      unseenSpecies: 0
    })
    expect(estimatedAssemblage(frequencyCounts([5, 4, 1]))).toMatchObject({
      seen: [0.1, 0.4, 0.5],
      unseenSpecies: 0
    })
    expect(estimatedAssemblage(frequencyCounts([9]))).toMatchObject({seen: [1], unseenSpecies: 0})
  })

  test('is not there where coverage is not defined', () => {
    for (const counts of [[], [1], [1, 1, 1]])
      expect(estimatedAssemblage(frequencyCounts(counts))).toBeUndefined()
  })
})

describe('a sample drawn from the assemblage', () => {
  test('of individuals has their number, and on average their shares', () => {
    const assemblage = estimatedAssemblage(GIRDLED)!
    const stream = randomStream(4, 'draws')
    const draws = Array.from({length: 3000}, () => drawSample(assemblage, stream))
    expect(draws.every(({size, kind}) => size === 168 && kind === 'abundance')).toBe(true)
    // Expected number of species: sum of 1 - (1-p)^n.
    const chances = [...assemblage.seen, ...new Array<number>(18).fill(assemblage.unseenEach)]
    const expected = sum(chances.map((p) => 1 - (1 - p) ** 168))
    expect(Math.abs(sum(draws.map(({species}) => species)) / 3000 - expected)).toBeLessThan(0.2)
    const ones = sum(chances.map((p) => 168 * p * (1 - p) ** 167))
    expect(Math.abs(sum(draws.map(({singletons}) => singletons)) / 3000 - ones)).toBeLessThan(0.3)
  })

  test('of sampling units has their number, and on average their rates', () => {
    const assemblage = estimatedAssemblage(UNITS)!
    const stream = randomStream(4, 'unit draws')
    const draws = Array.from({length: 3000}, () => drawSample(assemblage, stream))
    expect(draws.every(({size, kind}) => size === 12 && kind === 'incidence')).toBe(true)
    expect(Math.abs(sum(draws.map(({records}) => records)) / 3000 - 36)).toBeLessThan(0.25)
    const chances = [...assemblage.seen, ...new Array<number>(4).fill(assemblage.unseenEach)]
    const expected = sum(chances.map((p) => 1 - (1 - p) ** 12))
    expect(Math.abs(sum(draws.map(({species}) => species)) / 3000 - expected)).toBeLessThan(0.15)
  })

  test('of an assemblage without unseen species holds no others', () => {
    const assemblage = estimatedAssemblage(frequencyCounts([6, 3, 3]))!
    for (const stream of randomStream(1, 'closed').replicates(0, 200)) {
      const drawn = drawSample(assemblage, stream)
      expect(drawn.size).toBe(12)
      expect(drawn.species).toBeLessThanOrEqual(3)
    }
  })
})

describe('bootstrap replicates', () => {
  const sizes = [50, 168, 336]

  test('are the same however they are split over workers', () => {
    const stream = () => randomStream(9, 'curve/girdled')
    const whole = bootstrapReplicates(GIRDLED, stream(), 0, 30, curveStatistics(sizes))
    const parts = [
      ...bootstrapReplicates(GIRDLED, stream(), 0, 13, curveStatistics(sizes)),
      ...bootstrapReplicates(GIRDLED, stream(), 13, 30, curveStatistics(sizes))
    ]
    expect(parts).toEqual(whole)
    expect(diversityCurve(GIRDLED, sizes, parts)).toEqual(diversityCurve(GIRDLED, sizes, whole))
  })

  test('are none where coverage is not defined, and the curve then has no intervals', () => {
    const single = frequencyCounts([1, 1])
    const replicates = bootstrapReplicates(single, randomStream(9, 'single'), 0, 30, curveStatistics([2]))
    expect(replicates).toEqual([])
    expect(diversityCurve(single, [2], replicates)[0]!.q0).toEqual({value: 2})
  })

  test('take no part in a statistic that they cannot give, up to five in a hundred', () => {
    const rows = Array.from({length: 100}, (_, i) => [
      i < 5 ? Number.NaN : i,
      i < 6 ? Number.POSITIVE_INFINITY : i
    ])
    const [first, second] = bootstrapStandardErrors(rows, 2)
    // Whole numbers 5 to 99: variance 95 x 96 / 12.
    expect(first).toBeCloseTo(Math.sqrt((95 * 96) / 12), 10)
    expect(second).toBeUndefined()
  })
})

describe('intervals', () => {
  const sizes = curveSizes(GIRDLED.size)
  const replicates = bootstrapReplicates(GIRDLED, randomStream(1, 'curve'), 0, 200, curveStatistics(sizes))
  const curve = diversityCurve(GIRDLED, sizes, replicates)

  test('hold their estimates and keep within what is possible at every size', () => {
    for (const {size, coverage, q0, q1, q2} of curve) {
      for (const [quantity, lowest, highest] of [
        [coverage, 0, 1],
        [q0, 1, size],
        [q1, 1, size],
        [q2, 1, size]
      ] as const) {
        if (!isDefined(quantity) || quantity.interval === undefined) throw new Error(`no interval at ${size}`)
        expect(quantity.interval.low).toBeGreaterThanOrEqual(lowest)
        expect(quantity.interval.high).toBeLessThanOrEqual(highest)
        expect(quantity.interval.low).toBeLessThanOrEqual(quantity.value + 1e-12)
        expect(quantity.interval.high).toBeGreaterThanOrEqual(quantity.value - 1e-12)
      }
    }
  })

  test('are log-normal at order 0 and normal elsewhere, and say so', () => {
    const {coverage, q0, q1} = curve[20]!
    expect(q0).toMatchObject({interval: {method: 'log-normal, assemblage bootstrap', confidence: 0.95}})
    expect(q1).toMatchObject({interval: {method: 'estimate ± 1.96 standard errors, assemblage bootstrap'}})
    expect(coverage).toMatchObject({
      interval: {method: 'estimate ± 1.96 standard errors, assemblage bootstrap'}
    })
  })

  test('of asymptotic diversity are those of Chao1 at order 0 and of the bootstrap above', () => {
    const stream = randomStream(1, 'asymptotic')
    const {q0, q1, q2} = hillAsymptoticIntervals(
      GIRDLED,
      bootstrapReplicates(GIRDLED, stream, 0, 200, asymptoticStatistics)
    )
    expect(q0).toMatchObject({interval: {method: 'log-normal (Chao 1987)'}})
    expect(q1).toMatchObject({interval: {method: 'estimate ± 1.96 standard errors, assemblage bootstrap'}})
    expect(isDefined(q2) && q2.interval!.low).toBeGreaterThan(1)
  })

  test('of a complete catch have the standard errors of large samples', () => {
    const counts = [900, 600, 300, 150, 90, 60]
    const n = sum(counts)
    const sample = frequencyCounts(counts)
    const replicates = bootstrapReplicates(sample, randomStream(3, 'complete'), 0, 2000, asymptoticStatistics)
    const {q1, q2} = hillAsymptoticIntervals(sample, replicates)
    const shares = counts.map((count) => count / n)
    const moment = (term: (p: number) => number) => sum(shares.map((p) => p * term(p)))
    // Variance of the entropy (Basharin 1959, Theory Probab. Appl. 4:333-336) and of Simpson's index (Simpson 1949,
    // Nature 163:688), each times the squared slope of the Hill number.
    const ofEntropy = (moment((p) => Math.log(p) ** 2) - moment(Math.log) ** 2) / n
    const ofSimpson = (4 * (moment((p) => p ** 2) - moment((p) => p) ** 2)) / n
    const first = Math.exp(-moment(Math.log)) * Math.sqrt(ofEntropy)
    const second = moment((p) => p) ** -2 * Math.sqrt(ofSimpson)
    // The standard error of a standard error from 2000 replicates is 1.6 %.
    expect(isDefined(q1) && q1.standardError! / first).toBeCloseTo(1, 1)
    expect(isDefined(q2) && q2.standardError! / second).toBeCloseTo(1, 1)
  })
})

describe('comparison at equal coverage', () => {
  const common = commonCoverage([
    {name: 'girdled', sample: GIRDLED},
    {name: 'logged', sample: LOGGED},
    {name: 'few', sample: frequencyCounts([2, 1, 1, 1, 1, 1])},
    {name: 'one', sample: frequencyCounts([1])}
  ])

  test('is at the smallest of the coverages at doubled size', () => {
    expect(numberOf(common.coverage)).toBe(numberOf(coverageAtSize(GIRDLED, 336)))
    expect(common.compared).toEqual(['girdled', 'logged'])
  })

  test('leaves out and names those with little or unknown coverage', () => {
    // n 7, f1 5, f2 1: C = 1 - (5/7)(30/32) = 0.330.
    expect(common.leftOut).toEqual([
      {name: 'few', reason: 'its coverage is 0.330, below 0.5'},
      {
        name: 'one',
        reason: 'its coverage is not defined: one individual says nothing about the species that were missed'
      }
    ])
  })

  test('needs two samples', () => {
    expect(commonCoverage([{name: 'girdled', sample: GIRDLED}]).coverage).toEqual({
      notDefined: 'fewer than two samples have a coverage of at least 0.5'
    })
  })

  test('takes the sizes 336 and 436.57, at which order 0 is defined for both', () => {
    const target = numberOf(common.coverage)
    const [first, second] = [GIRDLED, LOGGED].map((sample) => diversityAtCoverage(sample, target))
    expect(numberOf(first!.size)).toBeCloseTo(336, 6)
    expect(numberOf(first!.q0)).toBeCloseTo(34.7307, 4)
    expect(numberOf(second!.size)).toBeCloseTo(436.57, 2)
    expect(isDefined(second!.q0)).toBe(true)
  })

  test('has intervals at that coverage', () => {
    const target = numberOf(common.coverage)
    const stream = randomStream(1, 'equal coverage/logged')
    const replicates = bootstrapReplicates(LOGGED, stream, 0, 100, coverageStatistics(target))
    for (const quantity of Object.values(diversityAtCoverage(LOGGED, target, replicates)).slice(1)) {
      expect(isDefined(quantity) && quantity.interval!.low < quantity.value).toBe(true)
    }
  })

  test('at a coverage of 1 takes complete samples as they are, and replicates at their limit', () => {
    const complete = frequencyCounts([30, 20, 5, 4, 3])
    const other = frequencyCounts([9, 9, 2])
    const {coverage} = commonCoverage([
      {name: 'a', sample: complete},
      {name: 'b', sample: other}
    ])
    expect(coverage).toEqual({value: 1})
    const stream = randomStream(1, 'complete')
    const replicates = bootstrapReplicates(complete, stream, 0, 50, coverageStatistics(1))
    expect(replicates.flat().every(Number.isFinite)).toBe(true)
    expect(diversityAtCoverage(complete, 1, replicates)).toMatchObject({size: {value: 62}, q0: {value: 5}})
  })
})
