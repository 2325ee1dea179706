import {readFileSync} from 'node:fs'
import {describe, expect, test} from 'vitest'
import {brayCurtis} from '../../src/statistics/bray-curtis.ts'
import {designMatrix} from '../../src/statistics/design-matrix.ts'
import {dispersionTest} from '../../src/statistics/dispersion-test.ts'
import {dissimilarityMatrix} from '../../src/statistics/dissimilarity-matrix.ts'
import {garwoodInterval} from '../../src/statistics/garwood-interval.ts'
import {holm} from '../../src/statistics/holm.ts'
import {kruskalWallis} from '../../src/statistics/kruskal-wallis.ts'
import {kruskalWallisPermutation} from '../../src/statistics/kruskal-wallis-permutation.ts'
import {likelihoodRatioPermutation} from '../../src/statistics/likelihood-ratio-permutation.ts'
import {negativeBinomialGlm} from '../../src/statistics/negative-binomial-glm.ts'
import {nonMetricScaling} from '../../src/statistics/non-metric-scaling.ts'
import {permanova} from '../../src/statistics/permanova.ts'
import {principalCoordinates} from '../../src/statistics/principal-coordinates.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {fitted} from './fitted.ts'
import {numberOf} from './number-of.ts'

// Written by rates-and-models.R beside it, in base R and MASS; it names their versions.
const reference: Reference = JSON.parse(
  readFileSync(new URL('second-implementation/rates-and-models.json', import.meta.url), 'utf8')
)

interface Reference {
  readonly models: readonly {
    readonly counts: readonly number[]
    readonly efforts: readonly number[]
    readonly groups: readonly string[]
    readonly blocks?: readonly string[]
    readonly theta: number
    readonly coefficients: readonly number[]
    readonly standardErrors: readonly number[]
    readonly pearson: readonly number[]
    readonly deviance: number
    readonly logLikelihood: number
    readonly thetaStandardError: number
    readonly likelihoodRatio: number
  }[]
  readonly kruskal: {
    readonly values: readonly number[]
    readonly groups: readonly string[]
    readonly statistic: number
    readonly chiSquareP: number
    readonly exactP: number
  }
  readonly composition: {
    readonly catch: readonly (readonly number[])[]
    readonly groups: readonly number[]
    readonly blocks: readonly number[]
    readonly bray: readonly number[]
    readonly pseudoF: number
    readonly r2: number
    readonly p: number
    readonly blockedF: number
    readonly distances: readonly number[]
    readonly dispersionF: number
    readonly eigenvalues: readonly number[]
    readonly stress: number
  }
  readonly garwood: {
    readonly events: readonly number[]
    readonly low: readonly number[]
    readonly high: readonly number[]
  }
  readonly holm: {readonly p: readonly number[]; readonly adjusted: readonly number[]}
}

const random = randomStream(1, 'second implementation')

function expectClose(actual: readonly number[], expected: readonly number[], digits: number): void {
  expect(actual).toHaveLength(expected.length)
  for (const [index, value] of expected.entries()) expect(actual[index]).toBeCloseTo(value, digits)
}

describe.each(reference.models)('the negative binomial model of $counts', (model) => {
  const {counts, efforts, groups, blocks} = model
  const {rows} = designMatrix(counts.length, blocks ? [groups, blocks] : [groups])
  const mine = fitted(negativeBinomialGlm({counts, design: rows, offset: efforts.map(Math.log)}))

  test('has the coefficients, theta and standard errors of MASS', () => {
    expectClose(mine.coefficients, model.coefficients, 7)
    expectClose(mine.standardErrors, model.standardErrors, 7)
    expect(mine.theta! / model.theta).toBeCloseTo(1, 6)
    // MASS keeps the one of its last step but one.
    expect(mine.thetaStandardError! / model.thetaStandardError).toBeCloseTo(1, 4)
  })

  test('has the likelihood, deviance and residuals of MASS', () => {
    expect(mine.logLikelihood).toBeCloseTo(model.logLikelihood, 8)
    expect(mine.deviance).toBeCloseTo(model.deviance, 5)
    expectClose(mine.pearsonResiduals, model.pearson, 6)
  })

  test('has the likelihood-ratio statistic of MASS', () => {
    const {statistic} = likelihoodRatioPermutation(
      {counts, efforts, groups, ...(blocks && {blocks})},
      {limit: 9, random}
    )
    expect(numberOf(statistic)).toBeCloseTo(model.likelihoodRatio, 6)
  })
})

test('Kruskal-Wallis agrees with R, and its p by permutation with all 252 labellings', () => {
  const {values, groups, statistic, chiSquareP, exactP} = reference.kruskal
  expect(numberOf(kruskalWallis(values, groups).statistic)).toBeCloseTo(statistic, 10)
  expect(numberOf(kruskalWallis(values, groups).chiSquareP)).toBeCloseTo(chiSquareP, 10)
  expect(numberOf(kruskalWallisPermutation(values, groups, {limit: 999, random}).p)).toBeCloseTo(exactP, 12)
})

describe('nine samples of five species', () => {
  const {composition} = reference
  const bray = dissimilarityMatrix(composition.catch, brayCurtis)
  if ('notDefined' in bray) throw new Error(bray.notDefined)
  const {groups, blocks} = composition

  test('are as far apart as in R', () => {
    expectClose(bray.matrix[0]!, composition.bray, 12)
  })

  test('have the F, R2 and exact p of traces and all labellings in R', () => {
    const result = permanova(bray.matrix, groups, {limit: 999, random})
    expect(numberOf(result.pseudoF)).toBeCloseTo(composition.pseudoF, 9)
    expect(numberOf(result.r2)).toBeCloseTo(composition.r2, 12)
    expect(numberOf(result.p)).toBeCloseTo(composition.p, 12)
    expect(result.scheme).toMatchObject({distinct: 280, exhaustive: true})
  })

  test('have the F after blocks of projections in R', () => {
    const result = permanova(bray.matrix, groups, {limit: 999, random, blocks})
    expect(numberOf(result.pseudoF)).toBeCloseTo(composition.blockedF, 9)
    expect(result.degreesOfFreedom).toEqual({groups: 2, residual: 4})
  })

  test('lie as far from their centroids as in R', () => {
    const result = dispersionTest(bray.matrix, groups, {limit: 99, random})
    expectClose(result.distances, composition.distances, 12)
    expect(numberOf(result.f)).toBeCloseTo(composition.dispersionF, 9)
  })

  test('have the eigenvalues of R, below zero too', () => {
    const result = principalCoordinates(bray.matrix)
    if ('notDefined' in result) throw new Error(result.notDefined)
    expectClose(result.eigenvalues, composition.eigenvalues, 12)
  })

  test('are scaled with no more stress than by MASS', () => {
    const {stress} = nonMetricScaling(bray.matrix, {random})
    expect(numberOf(stress)).toBeLessThan(composition.stress + 1e-4)
  })
})

test('exact Poisson intervals agree with the gamma quantiles of R', () => {
  const {events, low, high} = reference.garwood
  for (const [index, count] of events.entries()) {
    const interval = garwoodInterval(count)
    expect(interval.low).toBeCloseTo(low[index]!, 6)
    expect(interval.high).toBeCloseTo(high[index]!, 6)
  }
})

test("Holm's adjustment agrees with R", () => {
  expectClose(holm(reference.holm.p), reference.holm.adjusted, 12)
})
