import {expect, test} from 'vitest'
import {nameWithheld} from '../../src/model/withheld-taxa.ts'
import {numberOf, tinyResults, twoPlaces} from './tiny-study.ts'

const scopes = {beetles: {label: 'beetles', family: 'Carabidae'}}

/** Everything that stands at or below a place where both a habitat and a name could be told. */
function toldBesideHabitats(
  secret: string,
  {taxa, sexesAndStages, scopes: groups}: ReturnType<typeof seasonWith>
) {
  return JSON.stringify([
    taxa.map(({habitats, bySite}) => [habitats, bySite]),
    sexesAndStages.sexes.map(({habitats}) => habitats),
    sexesAndStages.stages.map(({habitats}) => habitats),
    groups.map(({habitats, sites, indicators}) => [habitats, sites, indicators])
  ]).includes(secret)
}

function seasonWith(sensitive: 1 | 4 | undefined, sites = twoPlaces.sites!) {
  return tinyResults({
    ...twoPlaces,
    sites,
    settings: {analysis: {scopes}},
    catch: [...twoPlaces.catch!, ['W1', '2026-06-01', 'Abax ater', 6, {lifeStage: 'larva'}]],
    taxa: {...twoPlaces.taxa, 'Abax ater': {...twoPlaces.taxa!['Abax ater'], ...(sensitive && {sensitive})}}
  })
}

test('a sensitive kind stands beside no habitat where some habitat is a single site, and its counts stay', () => {
  const results = seasonWith(1)
  expect(results.design.singleSiteHabitats.length).toBeGreaterThan(0)
  expect(toldBesideHabitats('Abax ater', results)).toBe(false)
  const open = seasonWith(undefined)
  expect(toldBesideHabitats('Abax ater', open)).toBe(true)
  const abax = (of: typeof results) => of.taxa.find(({taxon}) => taxon === 'Abax ater')!
  expect(numberOf(abax(results).total)).toBe(numberOf(abax(open).total))
  const ranks = (of: typeof results) => of.scopes[0]!.habitats.flatMap((habitat) => habitat.ranks)
  expect(ranks(results).map(({individuals}) => individuals)).toEqual(
    ranks(open).map(({individuals}) => individuals)
  )
  expect(ranks(results).map(({taxon}) => taxon)).toContain(nameWithheld)
})

test('a kind of a lower category keeps its place', () => {
  expect(toldBesideHabitats('Abax ater', seasonWith(4))).toBe(true)
})
