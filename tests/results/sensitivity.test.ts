import {expect, test} from 'vitest'
import {numberOf, type Tiny, tinyResults, twoPlaces} from './tiny-study.ts'

/** Of the wood's four exposures one was found dry with animals, one dry and empty. */
const failed: Tiny = {
  ...twoPlaces,
  visits: twoPlaces.visits!.map(([trap, opened, collected], index) => {
    return [
      trap,
      opened,
      collected,
      index === 4 ? {condition: 'dry'} : index === 7 ? {condition: 'dry', sample: 'empty'} : {}
    ] as const
  }),
  catch: twoPlaces.catch!.slice(0, 7)
}

function wood(tiny: Tiny) {
  return tinyResults(tiny).sensitivity.variants.map(({id, habitats}) => {
    const {net, individuals} = habitats[0]!
    return [id, numberOf(net), numberOf(individuals)]
  })
}

test('half, full and no credit change the effort of failures with animals, and without credit their catch goes', () => {
  expect(wood(failed)).toEqual([
    ['declared', 35, 10],
    ['half', 35, 10],
    ['full', 42, 10],
    ['without', 28, 5]
  ])
})

test('the declared variant is that of the report', () => {
  const results = tinyResults({
    ...failed,
    settings: {...failed.settings, conditions: {dry: {credit: 'none'}}}
  })
  const [declared] = results.sensitivity.variants
  expect(declared!.habitats.map(({net, rate}) => [numberOf(net), numberOf(rate)])).toEqual(
    results.habitats.map(({effort, catch: caught}) => [numberOf(effort.net), numberOf(caught.rate)])
  )
  expect(numberOf(declared!.habitats[0]!.net)).toBe(28)
})

test('a failure whose day is known does not hang on the credit', () => {
  const dated = {
    ...failed,
    visits: failed.visits!.map(([trap, opened, collected, rest], index) => {
      return [trap, opened, collected, index === 4 ? {...rest, failedOn: {day: 20580}} : rest!] as const
    })
  }
  expect(wood(dated).map(([, net]) => net)).toEqual([31, 31, 31, 31])
})

test('a loss that differs by more than 10 percentage points between habitats is said', () => {
  const {sensitivity} = tinyResults(failed)
  expect(numberOf(sensitivity.largestShareLost)).toBe(21 / 56)
  expect(sensitivity.largestShareLost.label).toContain('beech wood')
  expect(numberOf(sensitivity.smallestShareLost)).toBe(0)
  expect(numberOf(sensitivity.differenceInShareLost)).toBe(21 / 56)
  expect(sensitivity.lossDiffers).toBe(true)
  expect(tinyResults(twoPlaces).sensitivity.lossDiffers).toBe(false)
})
