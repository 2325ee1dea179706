import {expect, test} from 'vitest'
import {countingErrorMethod} from '../../src/model/counting-error.ts'
import type {Measure} from '../../src/model/quantity.ts'
import {ratioShare, shareBetweenUnitsMethod} from '../../src/statistics/ratio-share.ts'
import {madeStudy, roundDay, speciesName} from './made-study.ts'
import {numberOf, type Tiny, tinyResults, twoPlaces} from './tiny-study.ts'

const described: Tiny = {
  ...madeStudy({wood: [[6, 3, 1]], meadow: [[0, 4, 2]]}),
  taxa: {
    [speciesName(0)]: {guild: 'predator', bodyLengthMm: 19},
    [speciesName(1)]: {guild: 'seed eater', bodyLengthMm: 4.9}
  }
}

test('guilds and body sizes are counted for each habitat, and what is not known is said', () => {
  const {guilds, bodySizes} = tinyResults(described).scopes[0]!
  expect(guilds.recorded).toBe(true)
  expect([guilds.known, guilds.unknown].map(numberOf)).toEqual([13, 3])
  expect(guilds.classes).toEqual(['predator', 'seed eater'])
  const meadow = guilds.habitats.find(({id}) => id === 'meadow')!
  expect(meadow.classes.map(({individuals, share}) => [numberOf(individuals), numberOf(share)])).toEqual([
    [0, 0],
    [4, 1]
  ])
  expect(bodySizes.classes).toEqual(['under 5 mm', '15 to under 20 mm'])
  expect(bodySizes.study.map(({individuals, species}) => [numberOf(individuals), numberOf(species)])).toEqual(
    [
      [7, 1],
      [6, 1]
    ]
  )
})

test('a class of body length holds its lower end and not its upper one', () => {
  const {bodySizes} = tinyResults({
    ...described,
    taxa: {[speciesName(0)]: {bodyLengthMm: 5}, [speciesName(1)]: {bodyLengthMm: 20}}
  }).scopes[0]!
  expect(bodySizes.classes).toEqual(['5 to under 10 mm', '20 mm and more'])
})

test('without guilds in taxa.csv there is no make-up by guild', () => {
  const {guilds} = tinyResults(madeStudy({wood: [[3]]})).scopes[0]!
  expect([guilds.recorded, guilds.classes, guilds.study]).toEqual([false, [], []])
})

test('sexes and stages are told of the taxa of which they were recorded', () => {
  const {sexes, stages} = tinyResults({
    ...twoPlaces,
    catch: [
      ...twoPlaces.catch!,
      ['W1', '2026-06-01', 'Carabus nemoralis', 3, {lifeStage: 'larva'}],
      ['M1', '2026-06-01', 'Abax ater', 2]
    ]
  }).sexesAndStages
  expect(sexes.map(({taxon}) => taxon)).toEqual(['Abax ater'])
  const [abax] = sexes
  expect([abax!.females, abax!.males, abax!.undetermined].map(numberOf)).toEqual([5, 3, 3])
  expect(numberOf(abax!.shareFemale)).toBe(5 / 8)
  const meadow = abax!.habitats.find(({id}) => id === 'meadow')!
  expect(numberOf(meadow.shareFemale)).toBe('no adult of known sex was caught there')
  expect(
    stages.map(({taxon, stages: own}) => [taxon, own.map((each) => [each.stage, numberOf(each.individuals)])])
  ).toEqual([
    [
      'Carabus nemoralis',
      [
        ['adult', 3],
        ['larva', 3]
      ]
    ]
  ])
})

const intervalOf = (measure: Measure) => ('interval' in measure ? measure.interval : undefined)

test('shares have the interval between sites, and of one site or of none that of counting alone', () => {
  const {guilds} = tinyResults({
    ...madeStudy({
      wood: [
        [6, 3],
        [2, 9]
      ],
      meadow: [[0, 4]]
    }),
    taxa: {[speciesName(0)]: {guild: 'predator'}, [speciesName(1)]: {guild: 'seed eater'}}
  }).scopes[0]!
  const methods = guilds.habitats.map(({id, classes}) => [id, intervalOf(classes[0]!.share)?.method])
  expect(methods).toEqual([
    ['meadow', countingErrorMethod],
    ['wood', shareBetweenUnitsMethod]
  ])
  const wood = guilds.habitats.find(({id}) => id === 'wood')!
  expect(wood.classes[0]!.share).toMatchObject(
    ratioShare([
      {part: 6, whole: 9},
      {part: 2, whole: 11}
    ])
  )
})

test('sexes and stages carry intervals too, and the methods say which were used', () => {
  const results = tinyResults({
    ...madeStudy({wood: [[6], [4]]}),
    catch: [
      ['wood1-1', roundDay(0), 'Abax ater', 6, {sex: 'female'}],
      ['wood1-1', roundDay(0), 'Abax ater', 2, {sex: 'male'}],
      ['wood2-1', roundDay(0), 'Abax ater', 1, {sex: 'female'}],
      ['wood2-1', roundDay(0), 'Abax ater', 3, {sex: 'male'}],
      ['wood2-1', roundDay(0), 'Abax ater', 3, {lifeStage: 'larva'}]
    ]
  })
  const {sexes, stages} = results.sexesAndStages
  expect(intervalOf(sexes[0]!.shareFemale)?.method).toBe(shareBetweenUnitsMethod)
  expect(numberOf(stages[0]!.stages[1]!.share)).toBe(3 / 15)
  expect(intervalOf(stages[0]!.stages[1]!.share)?.method).toBe(shareBetweenUnitsMethod)
  const ids = results.methodsUsed.map(({id}) => id)
  expect([ids.includes('share-interval'), ids.includes('binomial-interval')]).toEqual([true, false])
})
