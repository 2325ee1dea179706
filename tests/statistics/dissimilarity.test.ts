import fc from 'fast-check'
import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {brayCurtis} from '../../src/statistics/bray-curtis.ts'
import {dissimilarityMatrix} from '../../src/statistics/dissimilarity-matrix.ts'
import {jaccard} from '../../src/statistics/jaccard.ts'
import {sorensen} from '../../src/statistics/sorensen.ts'
import {turnoverNestedness} from '../../src/statistics/turnover-nestedness.ts'
import {numberOf} from './number-of.ts'

const species = 8
const catches = fc.array(fc.integer({min: 0, max: 60}), {minLength: species, maxLength: species})
const presences = fc.array(fc.constantFrom(0, 1), {minLength: species, maxLength: species})
const filled = catches.filter((sample) => sample.some((count) => count > 0))
const measures = {brayCurtis, sorensen, jaccard}

describe.each(Object.entries(measures))('%s', (_, measure) => {
  test('is from 0 to 1, the same both ways, and 0 from a sample to itself', () => {
    fc.assert(
      fc.property(filled, filled, (first, second) => {
        const value = numberOf(measure(first, second))
        expect(value).toBeGreaterThanOrEqual(0)
        expect(value).toBeLessThanOrEqual(1)
        expect(measure(second, first)).toEqual({value})
        expect(measure(first, first)).toEqual({value: 0})
      })
    )
  })

  test('does not change with a species that neither sample has, nor with the order of species', () => {
    fc.assert(
      fc.property(filled, filled, (first, second) => {
        const value = numberOf(measure(first, second))
        expect(numberOf(measure([...first, 0], [...second, 0]))).toBe(value)
        expect(numberOf(measure([...first].reverse(), [...second].reverse()))).toBeCloseTo(value, 12)
      })
    )
  })

  test('is 1 between an empty sample and a filled one, and not defined between two empty ones', () => {
    expect(measure([0, 0], [3, 0])).toEqual({value: 1})
    expect(measure([0, 0], [0, 0])).toEqual({notDefined: 'both samples are empty'})
  })

  test('refuses samples of different numbers of species', () => {
    expect(() => measure([1], [1, 2])).toThrow(RangeError)
  })
})

test('Bray-Curtis of presences and absences is Sorensen', () => {
  fc.assert(
    fc.property(presences, presences, (first, second) => {
      const bray = brayCurtis(first, second)
      const sor = sorensen(first, second)
      expect(isDefined(bray)).toBe(isDefined(sor))
      if (isDefined(bray)) expect(numberOf(sor)).toBeCloseTo(bray.value, 12)
    })
  )
})

test('Jaccard is 2 S/(1 + S) of Sorensen S', () => {
  fc.assert(
    fc.property(filled, filled, (first, second) => {
      const s = numberOf(sorensen(first, second))
      expect(numberOf(jaccard(first, second))).toBeCloseTo((2 * s) / (1 + s), 12)
    })
  )
})

test('Bray-Curtis of rates does not change with the unit of effort', () => {
  fc.assert(
    fc.property(filled, filled, fc.double({min: 0.01, max: 100, noNaN: true}), (first, second, scale) => {
      const scaled = [first, second].map((sample) => sample.map((value) => value * scale))
      expect(numberOf(brayCurtis(scaled[0]!, scaled[1]!))).toBeCloseTo(
        numberOf(brayCurtis(first, second)),
        10
      )
    })
  )
})

describe('turnover and nestedness', () => {
  test('add up to Sorensen, pairwise and among several samples', () => {
    fc.assert(
      fc.property(fc.array(filled, {minLength: 2, maxLength: 6}), (samples) => {
        const {sorensen: total, turnover, nestedness} = turnoverNestedness(samples)
        if (!isDefined(turnover)) return
        expect(numberOf(turnover) + numberOf(nestedness)).toBeCloseTo(numberOf(total), 12)
        expect(numberOf(nestedness)).toBeGreaterThanOrEqual(-1e-12)
        expect(numberOf(turnover)).toBeGreaterThanOrEqual(0)
      })
    )
  })

  test('of two samples have the dissimilarity of Sorensen', () => {
    fc.assert(
      fc.property(filled, filled, (first, second) => {
        expect(numberOf(turnoverNestedness([first, second]).sorensen)).toBeCloseTo(
          numberOf(sorensen(first, second)),
          12
        )
      })
    )
  })

  test('of nested samples are nestedness alone, of equally rich ones turnover alone', () => {
    const nested = turnoverNestedness([
      [1, 1, 1, 1],
      [1, 1, 0, 0],
      [1, 0, 0, 0]
    ])
    expect(nested.turnover).toEqual({value: 0})
    expect(numberOf(nested.nestedness)).toBe(numberOf(nested.sorensen))
    const replaced = turnoverNestedness([
      [1, 1, 0, 0],
      [0, 1, 1, 0],
      [0, 0, 1, 1]
    ])
    expect(numberOf(replaced.nestedness)).toBeCloseTo(0, 12)
  })

  test('of several samples follow the formulas of Baselga 2010 by hand', () => {
    // Species of each 4, 3, 2; together 5.
    const {sorensen: total, turnover} = turnoverNestedness([
      [1, 1, 1, 1, 0],
      [1, 1, 0, 0, 1],
      [1, 0, 0, 0, 1]
    ])
    // min and max of each pair: 1-2: only first 2, only second 1; 1-3: 3 and 1; 2-3: 1 and 0.
    const smaller = 1 + 1 + 0
    const larger = 2 + 3 + 1
    expect(numberOf(turnover)).toBeCloseTo(smaller / (9 - 5 + smaller), 12)
    expect(numberOf(total)).toBeCloseTo((smaller + larger) / (2 * (9 - 5) + smaller + larger), 12)
  })

  test('of one sample, or of samples without any species, are not defined', () => {
    expect(turnoverNestedness([[1]]).sorensen).toEqual({notDefined: 'there are fewer than two samples'})
    expect(turnoverNestedness([[0], [0]]).turnover).toEqual({notDefined: 'no sample holds any species'})
  })
})

test('a matrix of dissimilarities names the first pair that has none', () => {
  const result = dissimilarityMatrix(
    [
      [1, 0],
      [0, 0],
      [2, 2],
      [0, 0]
    ],
    brayCurtis
  )
  expect(result).toEqual({notDefined: 'both samples are empty', pair: [1, 3]})
})
