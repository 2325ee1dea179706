import {expect, test} from 'vitest'
import type {Quantity} from '../../src/model/quantity.ts'
import {ace} from '../../src/statistics/ace.ts'
import {bootstrapReplicates} from '../../src/statistics/bootstrap-replicates.ts'
import {chao1} from '../../src/statistics/chao1.ts'
import {chao2} from '../../src/statistics/chao2.ts'
import {logNormalAboveSeen, logNormalAround, normalWithin} from '../../src/statistics/confidence-interval.ts'
import {coverageStatistics, diversityAtCoverage} from '../../src/statistics/diversity-at-coverage.ts'
import {curveStatistics, diversityCurve} from '../../src/statistics/diversity-curve.ts'
import {frequencyCounts, incidenceCounts} from '../../src/statistics/frequency-counts.ts'
import {
  asymptoticStatistics,
  hillAsymptoticIntervals
} from '../../src/statistics/hill-asymptotic-intervals.ts'
import {ice} from '../../src/statistics/ice.ts'
import {jackknife1} from '../../src/statistics/jackknife-1.ts'
import {jackknife2} from '../../src/statistics/jackknife-2.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'

const sample = frequencyCounts([30, 12, 8, 5, 3, 2, 2, 1, 1, 1])
const occurrences = incidenceCounts([8, 6, 5, 2, 2, 1, 1, 1], 10)
const presence = Array.from({length: 10}, (_, unit) => [8, 6, 5, 2, 2, 1, 1, 1].map((units) => unit < units))
const replicates = (statistics: Parameters<typeof bootstrapReplicates>[4]) =>
  bootstrapReplicates(sample, randomStream(1, 'level'), 0, 60, statistics)

const estimates: Readonly<Record<string, (confidence?: number) => Quantity>> = {
  Chao1: (level) => chao1(sample, level),
  ACE: (level) => ace(sample, 10, level),
  Chao2: (level) => chao2(occurrences, level),
  ICE: (level) => ice(presence, 10, level),
  'jackknife 1': (level) => jackknife1(occurrences, level),
  'jackknife 2': (level) => jackknife2(occurrences, level),
  'asymptotic diversity of order 0': (level) => hillAsymptoticIntervals(sample, [], level).q0,
  'asymptotic diversity of order 1': (level) =>
    hillAsymptoticIntervals(sample, replicates(asymptoticStatistics), level).q1,
  'a curve': (level) => diversityCurve(sample, [50], replicates(curveStatistics([50])), level)[0]!.q0,
  'its coverage': (level) =>
    diversityCurve(sample, [50], replicates(curveStatistics([50])), level)[0]!.coverage,
  'diversity at a coverage': (level) =>
    diversityAtCoverage(sample, 0.9, replicates(coverageStatistics(0.9)), level).q2
}

test.each(Object.entries(estimates))(
  'the interval of %s has the confidence asked for, 0.95 by default',
  (_, estimate) => {
    const intervalAt = (confidence?: number) => {
      const quantity = estimate(confidence)
      if (!('value' in quantity) || quantity.interval === undefined) throw new Error('no interval')
      return quantity.interval
    }
    const [narrow, usual, wide] = [intervalAt(0.5), intervalAt(), intervalAt(0.99)]
    expect([narrow.confidence, usual.confidence, wide.confidence]).toEqual([0.5, 0.95, 0.99])
    expect(intervalAt(0.95)).toEqual(usual)
    expect(narrow.low).toBeGreaterThan(usual.low)
    expect(narrow.high).toBeLessThan(usual.high)
    expect(wide.low).toBeLessThanOrEqual(usual.low)
    expect(wide.high).toBeGreaterThanOrEqual(usual.high)
  }
)

test('a normal interval says how many standard errors it spans', () => {
  expect(normalWithin(5, 1, 0, 9, 'of its own', 0.9)).toEqual({
    low: expect.closeTo(5 - 1.6448536, 6),
    high: expect.closeTo(5 + 1.6448536, 6),
    confidence: 0.9,
    method: 'estimate ± 1.64 standard errors, of its own'
  })
})

test('log-normal intervals of a larger confidence hold those of a smaller one', () => {
  const above = (level: number) => logNormalAboveSeen(10, 15, 9, level)
  const around = (level: number) => logNormalAround(15, 3, 1, 90, 'of its own', level)
  for (const interval of [above, around]) {
    expect(interval(0.99).low).toBeLessThan(interval(0.8).low)
    expect(interval(0.99).high).toBeGreaterThan(interval(0.8).high)
  }
})
