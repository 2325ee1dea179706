import {expect, test} from 'vitest'
import {brayCurtis} from '../../src/statistics/bray-curtis.ts'
import {designMatrix} from '../../src/statistics/design-matrix.ts'
import {dissimilarityMatrix} from '../../src/statistics/dissimilarity-matrix.ts'
import {garwoodInterval} from '../../src/statistics/garwood-interval.ts'
import {negativeBinomialGlm} from '../../src/statistics/negative-binomial-glm.ts'
import {permanova} from '../../src/statistics/permanova.ts'
import {poissonGlm} from '../../src/statistics/poisson-glm.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {ratioRate} from '../../src/statistics/ratio-rate.ts'
import {sorensen} from '../../src/statistics/sorensen.ts'
import {turnoverNestedness} from '../../src/statistics/turnover-nestedness.ts'
import {fitted} from './fitted.ts'
import {numberOf} from './number-of.ts'
import {shipDamageIncidents} from './ship-damage-incidents.ts'

test.each([
  // Villa-Castillo & Wagner 2002, Environ. Entomol. 31:242-252.
  ['160 traps x 40 nights', 919, 160 * 40, '14.359'],
  // Bergmann et al. 2012, Environ. Entomol. 41:1069-1076.
  ['10 traps x 42 nights', 583, 10 * 42, '138.810'],
  // Lobo 1996, Global Ecol. Biogeogr. Lett. 5:342-352.
  ['60 traps x 5 nights', 1537, 60 * 5, '512.333']
])('%s with %i animals give the published rate per 100 trap-nights', (_, count, effort, rate) => {
  expect(numberOf(ratioRate([{count, effort}], {per: 100})).toFixed(3)).toBe(rate)
})

// Garwood 1936, Biometrika 28:437-442 [from memory].
test('ten events have the published exact Poisson interval', () => {
  const {low, high} = garwoodInterval(10)
  expect([low.toFixed(3), high.toFixed(3)]).toEqual(['4.795', '18.390'])
})

// McCullagh & Nelder 1989, Generalized Linear Models, 2nd ed., section 6.3.2 [from memory].
test('ship-damage incidents have the published Poisson model', () => {
  const {rows, columnOf} = designMatrix(
    shipDamageIncidents.length,
    [0, 1, 2].map((column) => shipDamageIncidents.map((row) => row[column]!))
  )
  const model = fitted(
    poissonGlm({
      counts: shipDamageIncidents.map((row) => row[4]),
      design: rows,
      offset: shipDamageIncidents.map((row) => Math.log(row[3]))
    })
  )
  expect(model.deviance.toFixed(3)).toBe('38.695')
  expect(model.residualDegreesOfFreedom).toBe(25)
  const types = ['B', 'C', 'D', 'E'].map((type) => model.coefficients[columnOf[0]!.get(type)!]!.toFixed(4))
  expect(types).toEqual(['-0.5433', '-0.6874', '-0.0760', '0.3256'])
})

// Bliss & Fisher 1953, Biometrics 9:176-200 [from memory].
test('red mites on apple leaves have the published k', () => {
  const leaves = [70, 38, 17, 10, 9, 3, 2, 1]
  const counts = leaves.flatMap((number, mites) => Array.from({length: number}, () => mites))
  const model = fitted(negativeBinomialGlm({counts, design: designMatrix(counts.length, []).rows}))
  expect(counts).toHaveLength(150)
  expect(model.theta?.toFixed(4)).toBe('1.0246')
})

// Dobson 1983, An Introduction to Statistical Modelling: dried weights of plants in three groups [from memory].
test('permanova of one variable is the published analysis of variance of plant weights', () => {
  const weights = [
    [4.17, 5.58, 5.18, 6.11, 4.5, 4.61, 5.17, 4.53, 5.33, 5.14],
    [4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69],
    [6.31, 5.12, 5.54, 5.5, 5.37, 5.29, 4.92, 6.15, 5.8, 5.26]
  ]
  const distances = dissimilarityMatrix(weights.flat(), (a, b) => ({value: Math.abs(a - b)}))
  if ('notDefined' in distances) throw new Error(distances.notDefined)
  const groups = weights.flatMap((group, index) => group.map(() => index))
  const result = permanova(distances.matrix, groups, {limit: 99, random: randomStream(1, 'weights')})
  expect(numberOf(result.pseudoF).toFixed(6)).toBe('4.846088')
  expect(numberOf(result.r2).toFixed(6)).toBe('0.264148')
  expect(result.degreesOfFreedom).toEqual({groups: 2, residual: 27})
})

// Counts of two tanks, as computed by hand: (4 + 7 + 2) / 33.
test('two tanks are 0.3939 apart in Bray-Curtis', () => {
  expect(numberOf(brayCurtis([6, 7, 4], [10, 0, 6])).toFixed(4)).toBe('0.3939')
})

// Baselga 2010, Glob. Ecol. Biogeogr. 19:134-143: shared 4, only first 1, only second 6.
test('Sorensen dissimilarity is turnover and nestedness by the formulas of Baselga', () => {
  const first = [1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0]
  const second = [1, 1, 1, 1, 0, 1, 1, 1, 1, 1, 1]
  const parts = turnoverNestedness([first, second])
  expect(numberOf(sorensen(first, second)).toFixed(4)).toBe('0.4667')
  expect(numberOf(parts.sorensen).toFixed(4)).toBe('0.4667')
  expect(numberOf(parts.turnover).toFixed(4)).toBe('0.2000')
  expect(numberOf(parts.nestedness).toFixed(4)).toBe('0.2667')
})
