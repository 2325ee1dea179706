import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {countDeviance, countLogLikelihood} from '../../src/statistics/count-log-likelihood.ts'
import {isFitted} from '../../src/statistics/count-model.ts'
import {designMatrix} from '../../src/statistics/design-matrix.ts'
import {influence} from '../../src/statistics/influence.ts'
import type {GroupedCounts} from '../../src/statistics/likelihood-ratio-permutation.ts'
import {negativeBinomialGlm} from '../../src/statistics/negative-binomial-glm.ts'
import {poissonGlm} from '../../src/statistics/poisson-glm.ts'
import {rateRatios} from '../../src/statistics/rate-ratios.ts'
import {fitted} from './fitted.ts'
import {numberOf} from './number-of.ts'

/** Six to eight sites of two habitats, each habitat with some catch. */
const twoHabitats: fc.Arbitrary<GroupedCounts> = fc
  .array(
    fc.record({
      counts: fc.integer({min: 0, max: 300}),
      efforts: fc.double({min: 5, max: 200, noNaN: true}),
      extra: fc.integer({min: 1, max: 9})
    }),
    {minLength: 6, maxLength: 8}
  )
  .map((sites) => ({
    counts: sites.map(({counts, extra}, index) => (index < 2 ? counts + extra : counts)),
    efforts: sites.map(({efforts}) => efforts),
    groups: sites.map((_, index) => (index % 2 === 0 ? 'heath' : 'wood'))
  }))

function designOf({groups, efforts}: GroupedCounts) {
  return {design: designMatrix(groups.length, [groups]).rows, offset: efforts.map(Math.log)}
}

describe('the Poisson model', () => {
  test('has expected counts that add up to the counts of every habitat', () => {
    fc.assert(
      fc.property(twoHabitats, (data) => {
        const {means} = fitted(poissonGlm({counts: data.counts, ...designOf(data)}))
        for (const habitat of ['heath', 'wood']) {
          const total = (values: readonly number[]) =>
            values.reduce((sum, value, site) => sum + (data.groups[site] === habitat ? value : 0), 0)
          expect(total(means)).toBeCloseTo(total(data.counts), 5)
        }
      }),
      {numRuns: 60}
    )
  })

  test('refuses lists of different lengths, counts that are not whole, and no effort', () => {
    expect(() => poissonGlm({counts: [1, 2], design: [[1]]})).toThrow(RangeError)
    expect(() => poissonGlm({counts: [1.5, 2], design: [[1], [1]]})).toThrow(RangeError)
    expect(() => poissonGlm({counts: [1, 2], design: [[1], [1]], offset: [0, Math.log(0)]})).toThrow(
      RangeError
    )
  })
})

describe('the negative binomial model', () => {
  test('is at least as likely as the Poisson model and as its neighbours in theta', () => {
    fc.assert(
      fc.property(twoHabitats, (data) => {
        const model = negativeBinomialGlm({counts: data.counts, ...designOf(data)})
        const poisson = fitted(poissonGlm({counts: data.counts, ...designOf(data)}))
        if (!isFitted(model)) return
        expect(model.logLikelihood).toBeGreaterThanOrEqual(poisson.logLikelihood - 1e-8)
        const {theta} = model
        if (theta === undefined) return
        for (const near of [theta * 0.99, theta * 1.01]) {
          expect(countLogLikelihood(data.counts, model.means, near)).toBeLessThanOrEqual(
            model.logLikelihood + 1e-8
          )
        }
      }),
      {numRuns: 60}
    )
  })

  test('does not care for the order of sites nor for the unit of effort', () => {
    fc.assert(
      fc.property(twoHabitats, (data) => {
        const forward = rateRatios(data, {order: ['heath', 'wood']})[0]!
        const turned = {
          counts: [...data.counts].reverse(),
          efforts: data.efforts.map((effort) => effort * 7).reverse(),
          groups: [...data.groups].reverse()
        }
        const backward = rateRatios(turned, {order: ['heath', 'wood']})[0]!
        if ('notDefined' in forward.ratio) return
        expect(numberOf(backward.ratio) / numberOf(forward.ratio)).toBeCloseTo(1, 5)
        expect(numberOf(backward.p)).toBeCloseTo(numberOf(forward.p), 5)
      }),
      {numRuns: 60}
    )
  })

  test('falls back to Poisson where counts spread less than Poisson', () => {
    const model = fitted(
      negativeBinomialGlm({
        counts: [10, 11, 10, 30, 29, 31],
        ...designOf({
          counts: [],
          efforts: [1, 1, 1, 1, 1, 1],
          groups: ['a', 'a', 'a', 'b', 'b', 'b']
        })
      })
    )
    expect(model.family).toBe('Poisson')
    expect(model.theta).toBeUndefined()
    expect(model.thetaStandardError).toBeUndefined()
  })

  test('reports a habitat without catch as separation, with the limit of the likelihood', () => {
    const counts = [0, 0, 0, 4, 9, 2]
    const groups = ['a', 'a', 'a', 'b', 'b', 'b']
    const model = negativeBinomialGlm({counts, ...designOf({counts, groups, efforts: [5, 6, 7, 5, 6, 7]})})
    const rest = fitted(
      negativeBinomialGlm({counts: [4, 9, 2], design: [[1], [1], [1]], offset: [5, 6, 7].map(Math.log)})
    )
    expect(model).toMatchObject({failed: 'separation'})
    // The empty habitat costs nothing in the limit.
    expect('logLikelihood' in model && model.logLikelihood).toBeCloseTo(rest.logLikelihood, 6)
  })

  test('cannot tell habitats from blocks that coincide with them', () => {
    const groups = ['a', 'a', 'b', 'b', 'c', 'c']
    const {rows} = designMatrix(6, [groups, groups])
    expect(negativeBinomialGlm({counts: [1, 2, 3, 4, 5, 6], design: rows})).toMatchObject({
      failed: 'not estimable'
    })
  })

  test('needs a site beyond the columns of its design', () => {
    expect(
      negativeBinomialGlm({
        counts: [1, 2],
        design: [
          [1, 0],
          [1, 1]
        ]
      })
    ).toMatchObject({failed: 'not estimable'})
  })

  test('stands counts in the hundred thousands', () => {
    const counts = [120_000, 250_000, 90_000, 410_000]
    const model = fitted(negativeBinomialGlm({counts, design: counts.map(() => [1])}))
    expect(model.coefficients[0]).toBeCloseTo(Math.log(217_500), 8)
    // Of large counts the spread is that of a gamma distribution, whose shape solves ln k - psi(k) = ln mean - mean ln.
    expect(model.theta).toBeGreaterThan(2)
    expect(model.theta).toBeLessThan(5)
  })
})

test('the likelihood of a huge theta is that of the Poisson distribution', () => {
  const counts = [0, 3, 70, 12]
  const means = [1, 2.5, 66, 15]
  expect(countLogLikelihood(counts, means, 1e9)).toBeCloseTo(countLogLikelihood(counts, means, Infinity), 5)
  expect(countDeviance(counts, means, 1e9)).toBeCloseTo(countDeviance(counts, means, Infinity), 5)
})

test('the probabilities of all negative binomial counts add up to 1', () => {
  const total = Array.from({length: 3000}, (_, count) => Math.exp(countLogLikelihood([count], [12.5], 0.7)))
  expect(total.reduce((sum, probability) => sum + probability, 0)).toBeCloseTo(1, 9)
})

describe('leaving out one site at a time', () => {
  test('names the site with the odd catch, whatever the order of sites', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7], {minLength: 8}), (order) => {
        const counts = [20, 25, 22, 19, 60, 66, 58, 900]
        const [found] = influence(
          {
            counts: order.map((site) => counts[site]!),
            efforts: order.map(() => 50),
            groups: order.map((site) => (site < 4 ? 'a' : 'b'))
          },
          ['a', 'b']
        )
        expect(order[found!.unit!]).toBe(7)
        expect(numberOf(found!.ratioWithout)).toBeCloseTo((60 + 66 + 58) / 3 / 21.5, 5)
      }),
      {numRuns: 20}
    )
  })

  test('names the only site of a habitat with catch, without which there is no ratio', () => {
    const [found] = influence({counts: [5, 9, 0, 7], efforts: [9, 9, 9, 9], groups: ['a', 'a', 'b', 'b']})
    expect(found!.unit).toBe(3)
    expect(found!.ratioWithout).toHaveProperty('notDefined')
  })

  test('names the only site of a habitat', () => {
    const [found] = influence({counts: [5, 9, 6, 7], efforts: [9, 9, 9, 9], groups: ['a', 'a', 'a', 'b']})
    expect(found).toMatchObject({unit: 3, ratioWithout: {notDefined: 'a group has no other unit'}})
  })

  test('names none where the ratio of all sites is not defined', () => {
    const [found] = influence({counts: [5, 9, 0, 0], efforts: [9, 9, 9, 9], groups: ['a', 'a', 'b', 'b']})
    expect(found).not.toHaveProperty('unit')
    expect(found!.ratioWithout).toHaveProperty('notDefined')
  })
})
