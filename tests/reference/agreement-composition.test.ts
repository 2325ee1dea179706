import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {brayCurtis} from '../../src/statistics/bray-curtis.ts'
import {dispersionTest} from '../../src/statistics/dispersion-test.ts'
import {dissimilarityMatrix} from '../../src/statistics/dissimilarity-matrix.ts'
import {nonMetricScaling} from '../../src/statistics/non-metric-scaling.ts'
import {permanova} from '../../src/statistics/permanova.ts'
import {principalCoordinates} from '../../src/statistics/principal-coordinates.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {turnoverNestedness} from '../../src/statistics/turnover-nestedness.ts'
import {disagreement, disagreements} from './disagreement.ts'
import {mostAssignments} from './most-assignments.ts'
import {cases, type Design, type PermanovaFigures, paired, reference} from './reference-file.ts'

type Matrix = readonly (readonly number[])[]

const designs = paired(cases.designs, reference.designs).map((design) => {
  const rates = design.input.counts.map((row, site) =>
    row.map((count) => (100 * count) / design.input.nights[site]!)
  )
  const roots = rates.map((row) => row.map(Math.sqrt))
  return {...design, plain: brayCurtisOf(rates), rooted: brayCurtisOf(roots)}
})

function brayCurtisOf(samples: Matrix): Matrix | undefined {
  const result = dissimilarityMatrix(samples, brayCurtis)
  return 'matrix' in result ? result.matrix : undefined
}

function options({id, block}: Design, limit = mostAssignments) {
  return {limit, random: randomStream(1, `agreement/${id}`), ...(block && {blocks: block})}
}

function permanovaDisagreements(input: Design, matrix: Matrix, figures: PermanovaFigures | null) {
  const ours = permanova(matrix, input.habitat, options(input, figures?.p === null ? 9 : mostAssignments))
  const {groups, residual} = ours.degreesOfFreedom
  if (figures === null) return disagreement(input.id, ours.pseudoF, null)
  return disagreements(
    `permanova of ${input.id}`,
    [ours.sumOfSquares.total, ours.sumOfSquares.residual, groups, residual, ours.pseudoF, ours.r2].concat(
      figures.p === null ? [] : [ours.p]
    ),
    [figures.ssTotal, figures.ssWithin, ...figures.df, figures.f, figures.r2].concat(figures.p ?? [])
  )
}

describe('composition of sites, in both implementations,', () => {
  test('has dissimilarities in the same designs', () => {
    for (const {id, plain, figures} of designs) {
      expect([id, plain !== undefined]).toEqual([id, figures.eigenvalues !== null])
    }
  })

  test('has the same permutational analysis of variance, of rates and of their square roots', () => {
    const found = designs.flatMap(({input, plain, rooted, figures}) =>
      plain && rooted
        ? [
            ...permanovaDisagreements(input, plain, figures.permanova),
            ...permanovaDisagreements(input, rooted, figures.permanovaSquareRoot)
          ]
        : []
    )
    expect(found).toEqual([])
  })

  test('has the same distances to centroids, and the same test of dispersion', () => {
    const found = designs.flatMap(({id, input, plain, figures}) => {
      const {dispersion} = figures
      if (plain === undefined || dispersion === null) return []
      const everyArrangement = figures.assignments <= mostAssignments
      const ours = dispersionTest(plain, input.habitat, options(input, everyArrangement ? undefined : 9))
      expect([id, ours.negativeSquares]).toEqual([id, dispersion.negativeSquares])
      return [
        ...disagreements(`${id} distance`, ours.distances, dispersion.distances),
        ...disagreement(`${id} F`, ours.f, dispersion.f),
        ...(everyArrangement ? disagreement(`${id} p`, ours.p, dispersion.p) : [])
      ]
    })
    expect(found).toEqual([])
  })

  test('has the same eigenvalues of principal coordinates, those below zero too', () => {
    const found = designs.flatMap(({id, plain, figures: {eigenvalues}}) => {
      if (plain === undefined || eigenvalues === null) return []
      const ours = principalCoordinates(plain)
      if ('notDefined' in ours) return [`${id}: ${ours.notDefined}`]
      return disagreements(id, ours.eigenvalues, eigenvalues, {relative: 0, absolute: 1e-9})
    })
    expect(found).toEqual([])
  })

  test('is scaled with no more stress than by many starts of another method', () => {
    const found = designs.flatMap(({id, plain, figures: {stress}}) => {
      if (plain === undefined || stress === null) return []
      const ours = nonMetricScaling(plain, {random: randomStream(1, `agreement/${id}`)}).stress
      if (!isDefined(ours)) return [`${id}: ${ours.notDefined}`]
      const fits = ours.value <= stress.least + 0.01 && ours.value <= stress.ofPrincipalAxes + 1e-9
      // Far below the least of 25 starts would be another measure of stress than Kruskal's.
      return fits && ours.value >= stress.least - 0.03
        ? []
        : [`${id}: ${ours.value} here, ${stress.least} there`]
    })
    expect(found).toEqual([])
  })

  test('has the same turnover and nestedness over all sites', () => {
    const found = designs.flatMap(({id, input, figures: {multiSite}}) => {
      const {sorensen, turnover, nestedness} = turnoverNestedness(input.counts)
      return disagreements(
        id,
        [sorensen, turnover, nestedness],
        [multiSite?.sorensen, multiSite?.turnover, multiSite?.nestedness]
      )
    })
    expect(found).toEqual([])
  })
})
