import {expect, test} from 'vitest'
import {madeStudy, twoHabitats} from './made-study.ts'
import {numberOf, tinyResults} from './tiny-study.ts'

const compositionOf = (
  habitats: Parameters<typeof madeStudy>[0],
  options?: Parameters<typeof madeStudy>[1]
) => tinyResults(madeStudy(habitats, options)).scopes[0]!.composition

test('composition is tested with its dispersion beside it, and the transformation is named', () => {
  const {supported, permanova, dispersion, transformation, dissimilarity, units} = compositionOf(twoHabitats)
  expect(supported).toBe(true)
  expect([dissimilarity, transformation]).toEqual([
    'Bray-Curtis',
    'individuals per 100 trap-nights, not transformed'
  ])
  expect(numberOf(units)).toBe(6)
  expect(numberOf(permanova.r2)).toBeGreaterThan(0.8)
  expect(numberOf(permanova.p)).toBeCloseTo(0.1)
  expect(numberOf(permanova.permutations.distinct)).toBe(10)
  expect(numberOf(permanova.permutations.floor)).toBeCloseTo(0.1)
  expect([permanova.groupDegreesOfFreedom, permanova.residualDegreesOfFreedom].map(numberOf)).toEqual([1, 4])
  expect(typeof numberOf(dispersion.p)).toBe('number')
  expect(dispersion.habitats.map(({id}) => id)).toEqual(['meadow', 'wood'])
})

test('under six sites a habitat a quiet dispersion test is said to show nothing', () => {
  const {cautions} = compositionOf(twoHabitats).dispersion
  expect(cautions).toHaveLength(1)
  expect(cautions[0]).toContain('With fewer than six sites in a habitat')
})

test('under six sites a habitat a dispersion test that rejects is said to be weak evidence', () => {
  const scattered = [
    [30, 1, 0],
    [2, 25, 9],
    [4, 1, 40],
    [25, 25, 0],
    [1, 40, 2]
  ]
  const tight = [0, 1, 2, 3, 4].map((extra) => [10 + extra, 11, 10])
  const {p, cautions} = compositionOf({scattered, tight}).dispersion
  expect(numberOf(p)).toBeLessThanOrEqual(0.05)
  expect(cautions).toHaveLength(1)
  expect(cautions[0]).toContain('is weak evidence')
})

test('with unequal numbers of sites the direction in which p errs is said', () => {
  const scattered = [
    [30, 1, 0],
    [2, 25, 9],
    [4, 1, 40]
  ]
  const tight = [0, 1, 2, 3].map((extra) => [10 + extra, 11, 10])
  expect(compositionOf({few: scattered, many: tight}).dispersion.cautions[0]).toContain('comes out too small')
  const many = [...scattered, [1, 30, 2], [20, 2, 20]]
  expect(compositionOf({few: tight.slice(0, 3), many}).dispersion.cautions[0]).toContain(
    'comes out too large'
  )
})

test('sites without catch are left out of the composition and named', () => {
  const {leftOut, units} = compositionOf({...twoHabitats, wood: [...twoHabitats.wood!, [0, 0]]})
  expect(leftOut).toEqual([
    {id: 'wood4', label: 'wood4', habitat: 'wood', style: 1, reason: 'nothing of the scope was caught there'}
  ])
  expect(numberOf(units)).toBe(6)
})

test('where the design forbids tests the pictures stay', () => {
  const {supported, reasons, permanova, dispersion, principalCoordinates, nonMetricScaling} = compositionOf({
    wood: twoHabitats.wood!.slice(0, 1),
    meadow: twoHabitats.meadow!.slice(0, 1),
    heath: [[9, 9, 9, 9]]
  })
  expect(supported).toBe(false)
  expect(reasons).toHaveLength(1)
  expect(numberOf(permanova.r2)).toContain('no habitat has more than one site')
  expect(numberOf(dispersion.p)).toContain('no habitat has more than one site')
  expect(principalCoordinates.scores.map(({id}) => id)).toEqual(['heath1', 'meadow1', 'wood1'])
  expect(principalCoordinates.shares).toHaveLength(2)
  expect(nonMetricScaling.scores).toHaveLength(3)
  expect('caution' in nonMetricScaling.stress).toBe(true)
})

test('two sites make no ordination in two dimensions, and that is said', () => {
  const {nonMetricScaling, principalCoordinates} = compositionOf({
    wood: [
      [3, 1],
      [1, 3]
    ]
  })
  expect(numberOf(nonMetricScaling.stress)).toBe('there are fewer than three samples')
  expect(principalCoordinates.scores[0]!.at).toHaveLength(1)
})

test('a season without any catch has no composition', () => {
  const {principalCoordinates, permanova} = compositionOf({wood: [[0], [0]], meadow: [[0], [0]]})
  expect(principalCoordinates.notDefined).toBe('there are fewer than two samples')
  expect(numberOf(permanova.p)).toBe('there are fewer than two groups')
})

test('habitats change places within blocks only', () => {
  const {permanova, dispersion} = compositionOf(twoHabitats, {blockOf: (_, index) => `farm ${index}`})
  expect(numberOf(permanova.permutations.distinct)).toBe(4)
  expect(numberOf(dispersion.permutations.distinct)).toBe(4)
  expect(numberOf(permanova.residualDegreesOfFreedom)).toBe(2)
})
