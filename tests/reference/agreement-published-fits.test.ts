import {expect, test} from 'vitest'
import {designMatrix} from '../../src/statistics/design-matrix.ts'
import {negativeBinomialGlm} from '../../src/statistics/negative-binomial-glm.ts'
import {permanova} from '../../src/statistics/permanova.ts'
import {poissonGlm} from '../../src/statistics/poisson-glm.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {fitted} from '../statistics/fitted.ts'
import {disagreement, disagreements, fittedModel} from './disagreement.ts'
import {reference} from './reference-file.ts'

const {mites, ships, plants} = reference.publishedFits

test('the second implementation meets every published value that it knows', () => {
  expect(reference.published.length).toBeGreaterThan(50)
  expect(reference.published.filter(({agrees}) => !agrees)).toEqual([])
})

test('red mites on apple leaves have the theta of the second implementation', () => {
  // Bliss & Fisher 1953, Biometrics 9:176-200 [from memory].
  const counts = [70, 38, 17, 10, 9, 3, 2, 1].flatMap((leaves, count) => Array<number>(leaves).fill(count))
  const model = fitted(negativeBinomialGlm({counts, design: designMatrix(counts.length, []).rows}))
  expect([
    ...disagreement('theta', model.theta, mites.theta, fittedModel),
    ...disagreement('its standard error', model.thetaStandardError, mites.seTheta, fittedModel),
    ...disagreements('coefficient', model.coefficients, mites.coefficients, fittedModel),
    ...disagreements('standard error', model.standardErrors, mites.se, fittedModel),
    ...disagreement('likelihood', model.logLikelihood, mites.logLik, fittedModel)
  ]).toEqual([])
})

test('damage incidents to ships have the Poisson model of the second implementation', () => {
  // McCullagh & Nelder 1989, Generalized Linear Models, 2nd ed., section 6.3.2 [from memory].
  const {type, year, period, service, incidents} = ships
  const {rows} = designMatrix(incidents.length, [type, year, period])
  const model = fitted(poissonGlm({counts: incidents, design: rows, offset: service.map(Math.log)}))
  expect([
    ...disagreements('coefficient', model.coefficients, ships.coefficients, fittedModel),
    ...disagreements('standard error', model.standardErrors, ships.se, fittedModel),
    ...disagreement('deviance', model.deviance, ships.deviance, fittedModel),
    ...disagreement('df', model.residualDegreesOfFreedom, ships.df),
    ...disagreement('likelihood', model.logLikelihood, ships.logLik, fittedModel)
  ]).toEqual([])
})

test('plant weights have the F of an analysis of variance in the second implementation', () => {
  // Dobson 1983, An Introduction to Statistical Modelling [from memory].
  const distances = plants.weight.map((a) => plants.weight.map((b) => Math.abs(a - b)))
  const {pseudoF} = permanova(distances, plants.group, {limit: 9, random: randomStream(1, 'plants')})
  expect(disagreement('F', pseudoF, plants.f)).toEqual([])
})
