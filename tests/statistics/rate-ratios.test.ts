import {describe, expect, test} from 'vitest'
import {isFitted} from '../../src/statistics/count-model.ts'
import type {GroupedCounts} from '../../src/statistics/likelihood-ratio-permutation.ts'
import {rateModel} from '../../src/statistics/rate-model.ts'
import {rateRatioMethod, rateRatios} from '../../src/statistics/rate-ratios.ts'
import {studentCdf, studentQuantile} from '../../src/statistics/special-functions.ts'
import {numberOf} from './number-of.ts'

describe('rate ratios', () => {
  const data: GroupedCounts = {
    counts: [12, 30, 7, 44, 85, 61, 20, 33, 41],
    efforts: [84, 90, 70, 84, 88, 60, 80, 84, 84],
    groups: ['a', 'a', 'a', 'b', 'b', 'b', 'c', 'c', 'c']
  }

  test.each([
    {blocks: undefined, parameters: 3},
    {blocks: [1, 2, 3, 1, 2, 3, 1, 2, 3], parameters: 5}
  ])('use t with the residual degrees of freedom, and widen by $parameters parameters', (layout) => {
    const blocked = {...data, ...(layout.blocks && {blocks: layout.blocks})}
    const {model, contrastOf} = rateModel(blocked)
    const [first] = rateRatios(blocked)
    if (!isFitted(model) || !first || 'notDefined' in first.ratio) throw new Error('a ratio was expected')
    const df = 9 - layout.parameters
    expect(first.degreesOfFreedom).toEqual({value: df})
    const {value, standardError} = first.ratio
    const givenTheta = model.standardErrors[contrastOf('b').indexOf(1)]!
    expect(standardError! / value / givenTheta).toBeCloseTo(Math.sqrt(9 / df), 10)
    expect(studentCdf(-Math.log(value) / (standardError! / value), df) * 2).toBeCloseTo(numberOf(first.p), 12)
  })

  test('of the Poisson model are widened just the same', () => {
    const even = {counts: [50, 51, 25, 24], efforts: [9, 9, 9, 9], groups: ['a', 'a', 'b', 'b']}
    expect(rateModel(even).model).toMatchObject({family: 'Poisson'})
    const {ratio} = rateRatios(even)[0]!
    const relative = 'value' in ratio ? ratio.standardError! / ratio.value : Number.NaN
    expect(relative).toBeCloseTo(Math.sqrt((1 / 101 + 1 / 49) * (4 / 2)), 8)
  })

  test('are not defined where the model leaves no residual degrees of freedom, and say why', () => {
    const [pair] = rateRatios({
      counts: [5, 7, 9, 8],
      efforts: [9, 9, 9, 9],
      groups: ['a', 'a', 'b', 'b'],
      blocks: [1, 2, 2, 3]
    })
    const why = {notDefined: expect.stringContaining('no unit is left to measure the spread by')}
    expect(pair).toMatchObject({ratio: why, p: why, adjustedP: why, degreesOfFreedom: why})
  })

  test('have the interval of their standard error', () => {
    const [first] = rateRatios(data)
    if (!first || 'notDefined' in first.ratio || !first.ratio.interval)
      throw new Error('a ratio was expected')
    const {value, standardError, interval} = first.ratio
    const half = (studentQuantile(0.975, 6) * standardError!) / value
    expect(interval.high).toBeCloseTo(value * Math.exp(half), 10)
    expect(interval.low).toBeCloseTo(value * Math.exp(-half), 10)
    expect(interval.method).toBe(rateRatioMethod)
    expect(rateRatioMethod).toMatch(/^approximate/)
  })

  test('multiply along a chain, and only p is adjusted for their number', () => {
    const [ba, ca, cb] = rateRatios(data)
    expect([ba, ca, cb].map((pair) => `${pair?.of}/${pair?.to}`)).toEqual(['b/a', 'c/a', 'c/b'])
    expect(numberOf(ba!.ratio) * numberOf(cb!.ratio)).toBeCloseTo(numberOf(ca!.ratio), 8)
    const raw = [ba, ca, cb].map((pair) => numberOf(pair!.p))
    const adjusted = [ba, ca, cb].map((pair) => numberOf(pair!.adjustedP))
    expect(Math.min(...adjusted)).toBeCloseTo(3 * Math.min(...raw), 12)
    const alone = rateRatios(data, {confidence: 0.9})[0]!
    expect(numberOf(alone.ratio)).toBe(numberOf(ba!.ratio))
  })

  test('come in the order asked for', () => {
    const pairs = rateRatios(data, {order: ['c', 'a', 'b']}).map(({of, to}) => `${of}/${to}`)
    expect(pairs).toEqual(['a/c', 'b/c', 'b/a'])
  })

  test('do not exist for one habitat', () => {
    expect(rateRatios({counts: [1, 2], efforts: [1, 1], groups: ['a', 'a']})).toEqual([])
  })
})
