import {expect, test} from 'vitest'
import {ordination} from '../../src/charts/ordination.ts'
import type {Results} from '../../src/model/results.ts'
import {type HabitatPlan, manyHabitats, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts, specValues} from './spec-values.ts'

const results = resultsOf(threeHabitats)
const [figure] = ordination.figures(results)

interface Box {
  readonly left: number
  readonly right: number
  readonly middle: number
}

/** Every line of a label, with the room that its letters take. */
function labelsOf(plans: readonly HabitatPlan[]): readonly Box[] {
  return specValues(ordination.figures(resultsOf(plans))[0]).flatMap(({text, left, middle, dy}) =>
    typeof text === 'string' && typeof left === 'number'
      ? [{left, right: left + text.length * 6.2, middle: Number(middle) + Number(dy)}]
      : []
  )
}

function withScores(
  change: Partial<Results['scopes'][number]['composition']['principalCoordinates']>
): Results {
  const scopes = results.scopes.map((scope) => {
    const {composition} = scope
    const principalCoordinates = {...composition.principalCoordinates, ...change}
    return {...scope, composition: {...composition, principalCoordinates}}
  })
  return {...results, scopes}
}

test('every site is a point in the colour and shape of its habitat, and named', () => {
  const points = specValues(figure).filter(({x, shape}) => x !== undefined && shape !== undefined)
  expect(points).toHaveLength(results.sites.length)
  expect(new Set(points.map(({shape}) => shape)).size).toBe(3)
  expect(specTexts(figure)).toContain('Oak wood 1')
})

test('one unit is as long on one axis as on the other', () => {
  interface Plot {
    readonly width: number
    readonly height: number
    readonly layer: readonly {encoding?: Record<string, {scale?: {domain?: readonly number[]}}>}[]
  }
  const {width, height, layer} = (figure?.spec ?? {layer: []}) as unknown as Plot
  const domains = ['x', 'y'].map(
    (axis) => layer.find(({encoding}) => encoding?.[axis]?.scale)?.encoding?.[axis]?.scale?.domain
  )
  const [x, y] = domains.map((domain) => (domain?.[1] ?? 0) - (domain?.[0] ?? 0))
  expect(x! / width).toBeCloseTo(y! / height, 9)
})

test.each([2, 3, 6, 12])('with %d habitats no name covers another', (howMany) => {
  const boxes = labelsOf(manyHabitats(howMany))
  for (const [index, one] of boxes.entries()) {
    for (const other of boxes.slice(index + 1)) {
      const apart =
        one.left >= other.right || other.left >= one.right || Math.abs(one.middle - other.middle) >= 12.9
      expect(apart).toBe(true)
    }
  }
})

test('points left without a name for want of room are counted below', () => {
  const note = specTexts(ordination.figures(resultsOf(manyHabitats(12)))[0]).find((text) =>
    text.startsWith('Without a name')
  )
  expect(note).toMatch(/^Without a name, for want of room: \d+ of the 44 points\.$/)
})

test('the axes tell the share of the variation that they show', () => {
  expect(JSON.stringify(figure?.spec)).toContain('axis 1: 41 % of the variation')
  expect(figure?.alternative).toContain('axis 1: 41 % of the variation, axis 2: 19 % of the variation.')
})

test('the data hold both ordinations', () => {
  expect(column(figure, 'axis_1')).toEqual(column(figure, 'scaling_1').map((value) => Number(value) / 2))
})

test('too few sites, or none that can be placed, leave no picture and a reason', () => {
  expect(ordination.figures(withScores({scores: []}))[0]).toMatchObject({
    notDrawn: 'it takes at least three sites with catch in this scope'
  })
  expect(
    ordination.figures(withScores({notDefined: 'there are more than 100 sampling units', scores: []}))[0]
  ).toMatchObject({
    notDrawn: 'there are more than 100 sampling units'
  })
})
