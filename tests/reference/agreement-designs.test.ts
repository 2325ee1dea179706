import {describe, expect, test} from 'vitest'
import {indicatorValue, largestIndicatorValue} from '../../src/statistics/indicator-value.ts'
import {indicatorValueTest} from '../../src/statistics/indicator-value-test.ts'
import {kruskalWallis} from '../../src/statistics/kruskal-wallis.ts'
import {kruskalWallisPermutation} from '../../src/statistics/kruskal-wallis-permutation.ts'
import {partition} from '../../src/statistics/partition.ts'
import {permutationTest} from '../../src/statistics/permutation-test.ts'
import {permutations} from '../../src/statistics/permutations.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {disagreement, disagreements} from './disagreement.ts'
import {mostAssignments} from './most-assignments.ts'
import {rateDisagreements} from './rate-disagreements.ts'
import {cases, type PartitionFigures, paired, reference} from './reference-file.ts'

const designs = paired(cases.designs, reference.designs).map(({id, input, figures}) => ({
  id,
  input,
  figures,
  habitats: [...new Set(input.habitat)],
  rates: input.counts.map((row, site) => row.map((count) => (100 * count) / input.nights[site]!)),
  options: {
    limit: mostAssignments,
    random: randomStream(1, `agreement/${id}`),
    ...(input.block && {blocks: input.block})
  },
  exhaustive: figures.assignments <= mostAssignments
}))

describe('designs of sites in habitats, in both implementations,', () => {
  test('have the same rates of habitats with their intervals', () => {
    const found = designs.flatMap(({id, input, figures, habitats}) =>
      habitats.flatMap((habitat, index) => {
        const own = input.habitat.flatMap((other, site) => (other === habitat ? [site] : []))
        return rateDisagreements(
          `${id} ${habitat}`,
          own.map((site) => figures.catch[site]!),
          own.map((site) => input.nights[site]!),
          figures.rates[index]!
        )
      })
    )
    expect(found).toEqual([])
  })

  test('have the same smallest p', () => {
    const found = designs.flatMap(({id, input, figures, options, exhaustive}) => {
      if (!exhaustive) return []
      const {smallestP, distinct} = permutations(input.habitat, options)
      return [
        ...disagreement(`${id} floor`, smallestP, figures.floor),
        ...disagreement(`${id} arrangements`, distinct, 1 / figures.floor)
      ]
    })
    expect(found).toEqual([])
  })

  test('have the same Kruskal-Wallis test of rates, by chi-square and over every arrangement', () => {
    const found = designs.flatMap(({id, input, figures, options, exhaustive}) => {
      const values = figures.catch.map((count, site) => (100 * count) / input.nights[site]!)
      const {statistic, chiSquareP} = kruskalWallis(values, input.habitat)
      const {p} = kruskalWallisPermutation(
        values,
        input.habitat,
        exhaustive ? options : {...options, limit: 9}
      )
      return [
        ...disagreement(`${id} H`, statistic, figures.kruskalWallis?.h),
        ...disagreement(`${id} chi-square p`, chiSquareP, figures.kruskalWallis?.pChiSquare),
        ...(exhaustive ? disagreement(`${id} p`, p, figures.kruskalWallisP) : [])
      ]
    })
    expect(found).toEqual([])
  })

  test('have the same indicator values', () => {
    const found = designs.flatMap(({id, input, figures, rates}) =>
      figures.indicators.flatMap((theirs, species) => {
        const ours = indicatorValue(
          rates.map((row) => row[species]!),
          input.habitat
        )
        const [habitat, specificity, fidelity, percent] = theirs ?? []
        return disagreements(
          `${id} species ${species}`,
          [Number(ours?.group ?? -1), ours?.specificity, ours?.fidelity, ours && 100 * ours.value],
          [habitat ?? -1, specificity, fidelity, percent]
        )
      })
    )
    expect(found).toEqual([])
  })

  test('have the same p of indicator values over every arrangement', () => {
    const found = designs.flatMap(({id, input, figures, rates, options, exhaustive}) => {
      if (!exhaustive) return []
      const plan = permutations(input.habitat, options)
      return figures.indicators.flatMap((theirs, species) => {
        if (theirs === null) return []
        const values = rates.map((row) => row[species]!)
        const {p} = permutationTest({
          permutations: plan,
          statistic: (arrangement) => largestIndicatorValue(values, arrangement, plan.groups.length),
          tolerance: 1e-9
        })
        return disagreement(`${id} species ${species}`, p, theirs[4])
      })
    })
    expect(found).toEqual([])
  })

  test('have the same adjusted p of indicator values wherever the design allows one', () => {
    let given = 0
    const found = designs.flatMap(({id, input, figures, rates, options, exhaustive}) => {
      if (!exhaustive) return []
      const values = figures.indicators.map((_, species) => rates.map((row) => row[species]!))
      const {species, withheld} = indicatorValueTest(values, input.habitat, options)
      given += withheld ? 0 : species.length
      const theirs = figures.indicators.filter((figure) => figure !== null)
      return [
        ...disagreements(
          `${id} p`,
          species.map(({p}) => p),
          theirs.map((figure) => (withheld ? null : figure[4]))
        ),
        ...disagreements(
          `${id} adjusted p`,
          species.map(({adjustedP}) => adjustedP),
          theirs.map((figure) => (withheld ? null : figure[5]))
        )
      ]
    })
    expect(found).toEqual([])
    expect(given).toBeGreaterThan(0)
  })

  test('have the same diversity within, between and over sites and habitats', () => {
    const found = designs.flatMap(({id, input, figures, habitats}) => {
      const pooled = habitats.map((habitat) =>
        input.counts[0]!.map((_, species) =>
          input.counts.reduce(
            (sum, row, site) => sum + (input.habitat[site] === habitat ? row[species]! : 0),
            0
          )
        )
      )
      return [
        ...partitionDisagreements(`${id} sites`, input.counts, figures.partitionSites),
        ...partitionDisagreements(`${id} habitats`, pooled, figures.partitionHabitats)
      ]
    })
    expect(found).toEqual([])
  })
})

function partitionDisagreements(
  what: string,
  communities: readonly (readonly number[])[],
  theirs: PartitionFigures | null
): readonly string[] {
  return [0, 1, 2].flatMap((order) => {
    const {alpha, beta, gamma} = partition(communities, order)
    return disagreements(
      `${what} q ${order}`,
      [alpha, beta, gamma],
      [theirs?.alpha[order], theirs?.beta[order], theirs?.gamma[order]]
    )
  })
}
