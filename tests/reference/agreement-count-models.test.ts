import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {countLogLikelihood} from '../../src/statistics/count-log-likelihood.ts'
import {isFitted} from '../../src/statistics/count-model.ts'
import {designMatrix} from '../../src/statistics/design-matrix.ts'
import {influence} from '../../src/statistics/influence.ts'
import {
  type GroupedCounts,
  likelihoodRatioPermutation
} from '../../src/statistics/likelihood-ratio-permutation.ts'
import {fitNegativeBinomial} from '../../src/statistics/negative-binomial-glm.ts'
import {poissonGlm} from '../../src/statistics/poisson-glm.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {rateModel} from '../../src/statistics/rate-model.ts'
import {rateRatios} from '../../src/statistics/rate-ratios.ts'
import {disagreement, disagreements, fittedModel} from './disagreement.ts'
import {mostAssignments} from './most-assignments.ts'
import {cases, paired, reference} from './reference-file.ts'

/**
 * A habitat with a single site is described and not tested; it is the design that refuses it, before any model
 * is asked (results/comparable.ts).
 */
const refusedByDesign = new Set(['single-site'])

const designs = paired(cases.designs, reference.designs)
  .filter(({id}) => !refusedByDesign.has(id))
  .map(({id, input, figures}) => {
    const data: GroupedCounts = {
      counts: figures.catch,
      efforts: input.nights,
      groups: input.habitat,
      ...(input.block && {blocks: input.block})
    }
    return {id, input, figures, data, ...rateModel(data)}
  })

describe('models of counts, in both implementations,', () => {
  test('are refused for the same designs', () => {
    for (const {id, input, figures, model} of designs) {
      expect(figures.catch).toEqual(input.counts.map((row) => row.reduce((sum, count) => sum + count, 0)))
      expect([id, isFitted(model)]).toEqual([id, figures.poisson !== null])
    }
  })

  test('are Poisson where counts spread no more than that, and else negative binomial', () => {
    for (const {id, figures, model} of designs) {
      if (!isFitted(model)) continue
      const expected = figures.overdispersed ? 'negative binomial' : 'Poisson'
      expect([id, model.family]).toEqual([id, expected])
    }
  })

  test('have the same Poisson coefficients, standard errors, likelihood and deviance', () => {
    const found = designs.flatMap(({id, input, figures}) => {
      if (figures.poisson === null) return []
      const {coefficients, se, logLik, deviance, df} = figures.poisson
      const factors = input.block ? [input.habitat, input.block] : [input.habitat]
      const offset = input.nights.map(Math.log)
      const model = poissonGlm({
        counts: figures.catch,
        design: designMatrix(offset.length, factors).rows,
        offset
      })
      if (!isFitted(model)) return [`${id}: ${model.message}`]
      return [
        ...disagreements(`${id} coefficient`, model.coefficients, coefficients, fittedModel),
        ...disagreements(`${id} standard error`, model.standardErrors, se, fittedModel),
        ...disagreement(`${id} likelihood`, model.logLikelihood, logLik, fittedModel),
        ...disagreement(`${id} deviance`, model.deviance, deviance, fittedModel),
        ...disagreement(`${id} df`, model.residualDegreesOfFreedom, df)
      ]
    })
    expect(found).toEqual([])
  })

  test('have the same theta, coefficients, standard errors and likelihood', () => {
    const found = designs.flatMap(({id, figures, model}) => {
      if (figures.negativeBinomial === null) return []
      const {theta, seTheta, coefficients, se, logLik} = figures.negativeBinomial
      if (!isFitted(model)) return [`${id}: ${model.message}`]
      return [
        ...disagreement(`${id} theta`, model.theta, theta, fittedModel),
        ...disagreement(`${id} standard error of theta`, model.thetaStandardError, seTheta, fittedModel),
        ...disagreements(`${id} coefficient`, model.coefficients, coefficients, fittedModel),
        ...disagreements(`${id} standard error`, model.standardErrors, se, fittedModel),
        ...disagreement(`${id} likelihood`, model.logLikelihood, logLik, fittedModel)
      ]
    })
    expect(found).toEqual([])
  })

  test('settle where the usual algorithm in R gives up', () => {
    const hard = designs.filter(({figures: {negativeBinomial}}) => negativeBinomial?.thetaOfGlmNb === null)
    expect(hard.length).toBeGreaterThan(0)
    for (const {model} of hard) expect(isFitted(model)).toBe(true)
  })

  test('are as likely with habitats and without', () => {
    const found = designs.flatMap(({id, input, figures, model}) => {
      if (figures.logLikSupremum === undefined) return []
      const [full, none] = figures.logLikSupremum
      const offset = input.nights.map(Math.log)
      const design = designMatrix(offset.length, input.block ? [input.block] : []).rows
      const {state, theta} = fitNegativeBinomial({counts: figures.catch, design, offset})
      return [
        ...disagreement(`${id} full`, model.logLikelihood, full, fittedModel),
        ...disagreement(
          `${id} null`,
          countLogLikelihood(figures.catch, state.means, theta),
          none,
          fittedModel
        )
      ]
    })
    expect(found).toEqual([])
  })

  test('give the same rate ratios with their intervals', () => {
    const found = designs.flatMap(({id, input, figures, data}) => {
      const ratios = rateRatios(data, {order: [...new Set(input.habitat)]})
      if (figures.ratios === null) return ratios.flatMap(({ratio}) => disagreement(id, ratio, null))
      return disagreements(
        id,
        ratios.flatMap(({of, to, ratio}) => {
          if (!isDefined(ratio)) return [undefined]
          const {value, standardError, interval} = ratio
          return [Number(to), Number(of), value, standardError! / value, interval?.low, interval?.high]
        }),
        figures.ratios.flat(),
        fittedModel
      )
    })
    expect(found).toEqual([])
  })

  test('give the same rate ratios without each site in turn', () => {
    let compared = 0
    const found = designs.flatMap(({id, input, figures, data}) => {
      const pairs = influence(data, [...new Set(input.habitat)])
      return figures.ratiosWithout.flatMap(([site, ratios]) => {
        compared += 1
        return disagreements(
          `${id} without ${site}`,
          pairs.map(({ratiosWithout}) => ratiosWithout[site]),
          ratios ?? pairs.map(() => null),
          fittedModel
        )
      })
    })
    expect(found).toEqual([])
    expect(compared).toBeGreaterThan(20)
  })

  test('give the same p of the habitats over every arrangement', () => {
    const found = designs.flatMap(({id, figures, data}) => {
      if (figures.assignments > mostAssignments) return []
      const random = randomStream(1, `agreement/${id}`)
      const {p, statistic, scheme} = likelihoodRatioPermutation(data, {limit: mostAssignments, random})
      expect(scheme.exhaustive).toBe(true)
      const [full, none] = figures.logLikSupremum ?? []
      const ratio = full === undefined ? null : 2 * (full - none!)
      return [
        ...disagreement(`${id} p`, p, figures.modelP),
        // A likelihood ratio is a difference of two fitted likelihoods.
        ...disagreement(`${id} statistic`, statistic, ratio, {relative: 1e-6, absolute: 1e-6}),
        ...disagreement(`${id} floor`, scheme.smallestP, figures.floor)
      ]
    })
    expect(found).toEqual([])
  })
})
