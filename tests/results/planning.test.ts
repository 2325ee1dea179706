import {describe, expect, test} from 'vitest'
import {effortForPrecision} from '../../src/statistics/effort-for-precision.ts'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {sizeForCoverage} from '../../src/statistics/size-for-coverage.ts'
import {type MadeHabitats, type MadeOptions, madeStudy, twoHabitats} from './made-study.ts'
import {numberOf, tinyResults} from './tiny-study.ts'

const results = (habitats: MadeHabitats, options?: MadeOptions) => tinyResults(madeStudy(habitats, options))

/** Four sites of each of two habitats, unlike enough to be clumped. */
const clumped: MadeHabitats = {
  meadow: [
    [30, 9, 4, 2, 1, 0],
    [61, 4, 5, 1, 0, 1],
    [19, 12, 2, 0, 0, 0],
    [44, 6, 8, 3, 0, 0]
  ],
  wood: [
    [80, 30, 9, 0, 2],
    [35, 51, 4, 1, 0],
    [120, 22, 15, 2, 1],
    [66, 70, 7, 1, 0]
  ]
}

describe('what a season tells about the next', () => {
  test('trap-nights for a coverage follow from the size that has it, at as many animals a night', () => {
    const {planning} = results(clumped, {
      settings: {analysis: {planning: {coverage: 0.9999}}}
    }).scopes[0]!
    const [meadow] = planning.habitats
    const pooled = [154, 31, 19, 6, 1, 1]
    const size = (sizeForCoverage(frequencyCounts(pooled), 0.9999) as {value: number}).value
    const net = numberOf(meadow!.net) as number
    expect(net).toBe(4 * 2 * 14)
    expect(size).toBeGreaterThan(212)
    expect(numberOf(meadow!.nightsForCoverage!)).toBe(Math.ceil((size / 212 - 1) * net))
  })

  test('a coverage that is reached needs nothing more, and one without singletons is never short', () => {
    const {planning} = results(clumped, {settings: {analysis: {planning: {coverage: 0.6}}}}).scopes[0]!
    expect(planning.habitats.map(({nightsForCoverage: nights}) => numberOf(nights!))).toEqual([0, 0])
  })

  test('trap-nights and sites for a narrower rate are those of the statistic', () => {
    const {planning} = results(clumped, {settings: {analysis: {planning: {half_width: 0.5}}}})
    const theta = numberOf(planning.theta) as number
    const [meadow] = planning.habitats
    const own = effortForPrecision({rate: 212 / 112, theta, units: 4, effort: 112, relativeHalfWidth: 0.5})
    expect(numberOf(meadow!.halfWidth)).toBeCloseTo((own.present as {value: number}).value, 12)
    const further = (quantity: unknown, now: number) =>
      Math.max(0, Math.ceil((quantity as {value: number}).value - now))
    expect(numberOf(meadow!.nightsForRate)).toBe(further(own.totalEffort, 112))
    expect(numberOf(meadow!.unitsForRate)).toBe(further(own.units, 4))
  })

  test('the smallest ratio of the layout is found for all names and for every group, from the seed alone', () => {
    const {planning, scopes} = results(clumped)
    const ratio = numberOf(planning.detection.ratio) as number
    expect(ratio).toBeGreaterThan(1.1)
    expect(ratio).toBeLessThan(10)
    expect(planning.detection.raised).toBe('meadow')
    expect(typeof numberOf(scopes[0]!.planning.detection.ratio)).toBe('number')
    expect(results(clumped).planning).toEqual(planning)
  })

  test('a layout whose smallest p is 0.10 would show no ratio', () => {
    const {detection} = results(twoHabitats).planning
    expect(numberOf(detection.ratio)).toBe('the smallest p that this layout allows is above the level')
  })

  test('blocks that leave fewer arrangements are told from a layout without them', () => {
    const {detection} = results(clumped, {blockOf: (_, index) => `block ${index}`}).planning
    // Two habitats in four blocks: eight arrangements, p of 1/8.
    expect(numberOf(detection.ratio)).toBe('the smallest p that this layout allows is above the level')
  })

  test('with one site a habitat only coverage can be planned for, and the reasons are said', () => {
    const {planning} = results({wood: [[9, 4, 2, 1, 1]], meadow: [[3, 20, 1, 1]]}).scopes[0]!
    for (const {halfWidth, nightsForRate, unitsForRate, nightsForCoverage} of planning.habitats) {
      for (const measure of [halfWidth, nightsForRate, unitsForRate])
        expect(numberOf(measure)).toBe('no habitat has more than one sampling unit')
      expect(typeof numberOf(nightsForCoverage!)).toBe('number')
    }
    expect(numberOf(planning.detection.ratio)).toContain('no habitat has more than one site')
  })

  test('a habitat without catch, and a season without any, have no numbers and say why', () => {
    const one = results({...clumped, wood: [[0], [0]]}).planning
    const wood = one.habitats.find(({id}) => id === 'wood')
    expect(numberOf(wood!.halfWidth)).toBe('nothing was caught')
    expect(numberOf(one.detection.ratio)).toBe('there is no model of counts to simulate from')
    const none = results({meadow: [[0], [0]], wood: [[0], [0]]}).scopes[0]!.planning
    expect(numberOf(none.habitats[0]!.halfWidth)).toBe('nothing was caught')
    expect(numberOf(none.habitats[0]!.nightsForCoverage!)).toBe('no individuals were caught')
    expect(numberOf(none.detection.ratio)).toBe('nothing was caught anywhere')
  })

  test('methods are named when they were used, and only then', () => {
    const planned = (habitats: MadeHabitats, options?: MadeOptions) =>
      results(habitats, options)
        .methodsUsed.map(({id}) => id)
        .filter((id) => id.startsWith('planned-'))
    const high = {settings: {analysis: {planning: {coverage: 0.9999}}}}
    expect(planned(clumped, high)).toEqual(['planned-coverage', 'planned-rate', 'planned-ratio'])
    expect(planned(clumped, {settings: {analysis: {planning: {coverage: 0.6}}}})).toEqual([
      'planned-rate',
      'planned-ratio'
    ])
    expect(planned({wood: [[9, 9, 9]], meadow: [[9, 9]]})).toEqual([])
  })
})
