import {describe, expect, test} from 'vitest'
import {chao2} from '../../src/statistics/chao2.ts'
import {coverage} from '../../src/statistics/coverage.ts'
import {coverageAtSize} from '../../src/statistics/coverage-at-size.ts'
import {incidenceCounts} from '../../src/statistics/frequency-counts.ts'
import {hillAsymptotic} from '../../src/statistics/hill-asymptotic.ts'
import {hillObserved} from '../../src/statistics/hill-observed.ts'
import {ice} from '../../src/statistics/ice.ts'
import {jackknife1} from '../../src/statistics/jackknife-1.ts'
import {jackknife2} from '../../src/statistics/jackknife-2.ts'
import {rarefactionAndExtrapolation} from '../../src/statistics/rarefaction-and-extrapolation.ts'
import {shannonAsymptotic} from '../../src/statistics/shannon-asymptotic.ts'
import {boundDisagreements, intervalDisagreements} from './bound-disagreements.ts'
import {disagreement} from './disagreement.ts'
import {cases, type IncidenceFigures, paired, reference} from './reference-file.ts'

const sets = paired(cases.incidence, reference.incidence).map(({id, input, figures}) => ({
  id,
  sample: incidenceCounts(figures.frequencies, input.units),
  presence: Array.from({length: input.units}, (_, unit) => input.species.map((row) => row[unit] === '1')),
  figures
}))

describe('sampling units by species, in both implementations,', () => {
  test('have the same numbers of units, incidences, species, uniques and duplicates', () => {
    for (const {sample, presence, figures} of sets) {
      const held = figures.frequencies.map((_, species) => presence.filter((unit) => unit[species]).length)
      expect(held).toEqual(figures.frequencies)
      const {size, records, species, singletons, doubletons} = sample
      expect([size, records, species, singletons, doubletons]).toEqual([
        figures.units,
        figures.incidences,
        figures.s,
        figures.uniques,
        figures.duplicates
      ])
    }
  })

  test('have the same Hill numbers as observed, of six orders', () => {
    const found = sets.flatMap(({id, sample, figures}) =>
      ['0', '0.5', '1', '1.5', '2', '3'].flatMap((order) =>
        disagreement(`${id} q ${order}`, hillObserved(sample, Number(order)), figures.hill?.[order])
      )
    )
    expect(found).toEqual([])
  })

  test.each([
    ['first-order jackknife', jackknife1, 'jackknife1'],
    ['second-order jackknife', jackknife2, 'jackknife2'],
    ['coverage', coverage, 'coverage'],
    ['asymptotic Shannon entropy', shannonAsymptotic, 'asymptoticShannon']
  ] as const)('have the same %s', (_, statistic, key) => {
    const found = sets.flatMap(({id, sample, figures}) => disagreement(id, statistic(sample), figures[key]))
    expect(found).toEqual([])
  })

  test('have the same ICE', () => {
    expect(sets.flatMap(({id, presence, figures}) => disagreement(id, ice(presence), figures.ice))).toEqual(
      []
    )
  })

  test('have the same variances and intervals of ICE and the jackknives', () => {
    const found = sets.flatMap(({id, sample, presence, figures}) => [
      ...intervalDisagreements(`${id} ICE`, ice(presence), figures.iceInterval),
      ...intervalDisagreements(`${id} jackknife 1`, jackknife1(sample), figures.jackknife1Interval),
      ...intervalDisagreements(`${id} jackknife 2`, jackknife2(sample), figures.jackknife2Interval)
    ])
    expect(found).toEqual([])
  })

  test('have the same Chao2, with its variance and interval', () => {
    const found = sets.flatMap(({id, sample, figures}) =>
      boundDisagreements(id, chao2(sample), figures.chao2)
    )
    expect(found).toEqual([])
  })

  test('have the same asymptotic diversity, and none where its orders cross', () => {
    const found = sets.flatMap(({id, sample, figures}) => {
      const {q0, q1, q2} = hillAsymptotic(sample)
      const withheld = crosses(figures)
      return [
        ...disagreement(`${id} q 0`, q0, withheld ? null : figures.chao2?.estimate),
        ...disagreement(`${id} q 1`, q1, withheld ? null : figures.asymptoticQ1),
        ...disagreement(`${id} q 2`, q2, withheld ? null : figures.asymptoticQ2)
      ]
    })
    expect(found).toEqual([])
    expect(sets.filter(({figures}) => !crosses(figures)).length).toBeGreaterThan(20)
  })

  test('have the same curves of coverage and diversity, rarefied and extrapolated', () => {
    const found = sets.flatMap(({id, sample, figures}) =>
      figures.curve.flatMap(([size, covered, ...diversities]) => [
        ...disagreement(`${id} coverage at ${size}`, coverageAtSize(sample, size), covered),
        ...([0, 1, 2] as const).flatMap((order) =>
          disagreement(
            `${id} q ${order} at ${size}`,
            rarefactionAndExtrapolation(sample, order, size),
            diversities[order]
          )
        )
      ])
    )
    expect(found).toEqual([])
  })
})

/** Whether the estimates of the second implementation are in no order that one assemblage could have. */
function crosses({chao2: bound, asymptoticQ1, asymptoticQ2}: IncidenceFigures): boolean {
  if (bound === null || asymptoticQ1 === null || asymptoticQ2 === null) return true
  return asymptoticQ1 > bound.estimate * (1 + 1e-9) || asymptoticQ2 > asymptoticQ1 * (1 + 1e-9)
}
