import {describe, expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {ace} from '../../src/statistics/ace.ts'
import {bergerParker} from '../../src/statistics/berger-parker.ts'
import {chao1} from '../../src/statistics/chao1.ts'
import {coverage} from '../../src/statistics/coverage.ts'
import {coverageAtSize} from '../../src/statistics/coverage-at-size.ts'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {giniSimpson} from '../../src/statistics/gini-simpson.ts'
import {giniSimpsonUnbiased} from '../../src/statistics/gini-simpson-unbiased.ts'
import {hillAsymptotic} from '../../src/statistics/hill-asymptotic.ts'
import {hillObserved} from '../../src/statistics/hill-observed.ts'
import {pielou} from '../../src/statistics/pielou.ts'
import {rarefactionAndExtrapolation} from '../../src/statistics/rarefaction-and-extrapolation.ts'
import {shannon} from '../../src/statistics/shannon.ts'
import {shannonAsymptotic} from '../../src/statistics/shannon-asymptotic.ts'
import {sizeForCoverage} from '../../src/statistics/size-for-coverage.ts'
import {boundDisagreements, intervalDisagreements} from './bound-disagreements.ts'
import {disagreement, solvedSize} from './disagreement.ts'
import {cases, paired, reference} from './reference-file.ts'

// README.md beside this file names the sources of all formulas.
const assemblages = paired(cases.abundance, reference.abundance).map(({id, input, figures}) => ({
  id,
  sample: frequencyCounts(input.counts),
  figures
}))

describe('individuals by species, in both implementations,', () => {
  test('have the same numbers of individuals, species, singletons and doubletons', () => {
    for (const {sample, figures} of assemblages) {
      const {size, species, singletons, doubletons} = sample
      expect([size, species, singletons, doubletons]).toEqual([figures.n, figures.s, figures.f1, figures.f2])
    }
  })

  test('have the same Hill numbers as observed, of six orders', () => {
    const found = assemblages.flatMap(({id, sample, figures}) =>
      ['0', '0.5', '1', '1.5', '2', '3'].flatMap((order) =>
        disagreement(`${id} q ${order}`, hillObserved(sample, Number(order)), figures.hill?.[order])
      )
    )
    expect(found).toEqual([])
  })

  test.each([
    ['Shannon entropy', shannon, 'shannon'],
    ['Gini-Simpson index', giniSimpson, 'giniSimpson'],
    ['unbiased Gini-Simpson index', giniSimpsonUnbiased, 'giniSimpsonUnbiased'],
    ['evenness of Pielou', pielou, 'pielou'],
    ['dominance of Berger and Parker', bergerParker, 'bergerParker'],
    ['ACE', ace, 'ace'],
    ['coverage', coverage, 'coverage'],
    ['asymptotic Shannon entropy', shannonAsymptotic, 'asymptoticShannon']
  ] as const)('have the same %s', (_, statistic, key) => {
    const found = assemblages.flatMap(({id, sample, figures}) =>
      disagreement(id, statistic(sample), figures[key])
    )
    expect(found).toEqual([])
  })

  test('have the same variance and interval of ACE', () => {
    const found = assemblages.flatMap(({id, sample, figures}) =>
      intervalDisagreements(id, ace(sample), figures.aceInterval)
    )
    expect(found).toEqual([])
  })

  test('have the same Chao1, with its variance and interval', () => {
    const found = assemblages.flatMap(({id, sample, figures}) =>
      boundDisagreements(id, chao1(sample), figures.chao1)
    )
    expect(found).toEqual([])
  })

  test('have the same asymptotic diversity, and none where its orders cross', () => {
    const found = assemblages.flatMap(({id, sample, figures}) => {
      const {q0, q1, q2} = hillAsymptotic(sample)
      // Without a bound of order 2 it lies above the others, which is a crossing too.
      const withheld = figures.asymptoticCross ?? true
      return [
        ...disagreement(`${id} q 0`, q0, withheld ? null : figures.chao1?.estimate),
        ...disagreement(`${id} q 1`, q1, withheld ? null : figures.asymptoticQ1),
        ...disagreement(`${id} q 2`, q2, withheld ? null : figures.asymptoticQ2)
      ]
    })
    expect(found).toEqual([])
    expect(assemblages.some(({sample}) => isDefined(hillAsymptotic(sample).q1))).toBe(true)
  })

  test('have the same curves of coverage and diversity, rarefied and extrapolated', () => {
    const found = assemblages.flatMap(({id, sample, figures}) =>
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

  test('need the same sizes for a coverage, below, at and above their own size', () => {
    const found = assemblages.flatMap(({id, sample, figures}) =>
      figures.sizeForCoverage.flatMap(([target, size]) =>
        disagreement(`${id} at ${target}`, sizeForCoverage(sample, target), size, solvedSize)
      )
    )
    expect(found).toEqual([])
  })
})
