import {expect, test} from 'vitest'
import {composition} from '../../src/charts/composition.ts'
import {rankAbundance} from '../../src/charts/rank-abundance.ts'
import {speciesShares} from '../../src/charts/species-shares.ts'
import type {Results} from '../../src/model/results.ts'
import {withoutHiddenNames} from '../../src/results/without-hidden-names.ts'
import {bareHabitat, manyHabitats, resultsOf, threeHabitats} from './fixture.ts'
import {column, specTexts} from './spec-values.ts'

const results = resultsOf([...threeHabitats, bareHabitat])
const {habitats} = results.scopes[0]!
const [figure] = composition.figures(results)

/** A habitat of a single site, and a name that no site may list. */
function withSecret(taxon: string): Results {
  const sites = results.sites.map((site, index) => ({
    ...site,
    taxa:
      index > 0
        ? []
        : results.taxa
            .filter(({taxon: name}) => name !== taxon)
            .map(({taxon: name, total}) => ({taxon: name, individuals: total, total}))
  }))
  return withoutHiddenNames({
    ...results,
    sites,
    design: {...results.design, singleSiteHabitats: ['Quarry floor']}
  })
}

test('the shares of a habitat add up to all its individuals', () => {
  for (const [index, {ranks}] of habitats.entries()) {
    const sum = speciesShares(habitats).reduce((total, {byHabitat}) => total + byHabitat[index]!, 0)
    expect(sum).toBeCloseTo(ranks.length === 0 ? 0 : 1, 9)
  }
})

test('twelve species have a row of their own, and all others share one', () => {
  const shares = speciesShares(habitats)
  expect(shares).toHaveLength(13)
  expect(shares.filter(({isRest}) => isRest).map(({taxon}) => taxon)).toEqual(['all other species'])
})

test('species stand by the habitat in which their share is largest, the largest first', () => {
  const rows = speciesShares(habitats).filter(({isRest}) => !isRest)
  const homes = rows.map(({byHabitat}) => byHabitat.indexOf(Math.max(...byHabitat)))
  expect(homes).toEqual(homes.toSorted((one, other) => one - other))
})

test('a share of nothing is a nought and has no bar', () => {
  const cells = column(figure, 'share_of_individuals')
  expect(cells.filter((share) => share === 0).length).toBeGreaterThan(0)
  expect(specTexts(figure)).toContain('0')
})

test('a habitat without catch has no column and is named below', () => {
  expect(specTexts(figure)).toContain('Nothing of this group was caught: Quarry floor.')
})

test('many habitats stand in blocks of five columns at most', () => {
  const [twelve] = composition.figures(resultsOf(manyHabitats(12)))
  expect(twelve?.spec?.vconcat).toHaveLength(3)
})

test('a name that may not be tied to a place is in no picture by habitat', () => {
  const secret = withSecret('Nebria brevicollis')
  for (const chart of [composition, rankAbundance])
    expect(JSON.stringify(chart.figures(secret))).not.toContain('Nebria brevicollis')
  expect(JSON.stringify(composition.figures(results))).toContain('Nebria brevicollis')
  expect(column(rankAbundance.figures(secret)[0], 'taxon')).toContain('name withheld')
})
