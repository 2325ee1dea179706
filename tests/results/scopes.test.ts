import {expect, test} from 'vitest'
import type {Settings} from '../../src/model/settings.ts'
import {numberOf, tinyResults, twoPlaces} from './tiny-study.ts'

const taxa = {
  ...twoPlaces.taxa,
  'Pardosa pullata': {order: 'Araneae', family: 'Lycosidae', class: 'Arachnida'},
  'Philonthus decorus': {order: 'Coleoptera', family: 'Staphylinidae', class: 'Insecta', genus: 'Philonthus'}
}

function scopesOf(settings: Settings) {
  const {scopes} = tinyResults({
    ...twoPlaces,
    settings,
    taxa,
    catch: [
      ...twoPlaces.catch!,
      ['W1', '2026-05-18', 'Pardosa pullata', 10],
      ['W1', '2026-05-18', 'Pardosa pullata', 20, {lifeStage: 'juvenile'}],
      ['W1', '2026-05-18', 'Philonthus decorus', 30],
      ['W1', '2026-05-18', 'Unheard of', 40],
      ['W1', '2026-05-18', 'Abax ater', 50, {lifeStage: 'larva'}]
    ]
  })
  return scopes.map(({id, label, study}) => [id, label, numberOf(study.individuals)])
}

test('without scopes and target groups there is one scope of all adults, ungrouped names included', () => {
  expect(scopesOf({})).toEqual([['all', 'All recorded taxa, adults', 99]])
})

test('each target group is a scope, be it an order, a family, a genus or a name, whatever its capitals', () => {
  expect(scopesOf({target: {groups: ['carabidae', 'Araneae', 'Philonthus', 'Unheard of']}})).toEqual([
    ['carabidae', 'carabidae, adults', 19],
    ['araneae', 'Araneae, adults', 10],
    ['philonthus', 'Philonthus, adults', 30],
    ['unheard-of', 'Unheard of, adults', 40]
  ])
})

test('juveniles and larvae join no adult scope, even where both stages were sought', () => {
  expect(scopesOf({target: {groups: ['Araneae'], life_stages: ['adult', 'juvenile']}})).toEqual([
    ['araneae', 'Araneae, adults', 10]
  ])
  expect(scopesOf({target: {groups: ['Araneae'], life_stages: ['juvenile']}})).toEqual([
    ['araneae', 'Araneae, juveniles', 20]
  ])
})

test('scopes of study.yaml hold what all their ranks say, and the names that they list', () => {
  expect(
    scopesOf({
      analysis: {
        scopes: {
          beetles: {label: 'beetles', order: 'Coleoptera'},
          ground: {order: 'Coleoptera', family: ['Carabidae', 'Lycosidae']},
          named: {family: 'Lycosidae', taxa: ['Unheard of']},
          larvae: {family: 'Carabidae', life_stages: ['larva']},
          everything: {}
        }
      }
    })
  ).toEqual([
    ['beetles', 'beetles', 49],
    ['ground', 'ground', 19],
    ['named', 'named', 50],
    ['larvae', 'larvae', 50],
    ['everything', 'everything', 99]
  ])
})

test('a group named twice is one scope', () => {
  expect(scopesOf({target: {groups: ['Araneae', 'araneae']}})).toEqual([['araneae', 'araneae, adults', 10]])
})
