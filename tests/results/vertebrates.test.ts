import {expect, test} from 'vitest'
import {numberOf, tinyResults, twoPlaces} from './tiny-study.ts'

test('vertebrates are counted per 1,000 trap-nights of exposure, whether these count or not', () => {
  const {vertebrates, sites} = tinyResults({
    ...twoPlaces,
    visits: twoPlaces.visits!.map(
      ([trap, opened, collected], index) =>
        [
          trap,
          opened,
          collected,
          {
            vertebratesCount: index === 0 ? 2 : 0,
            ...(index === 0 && {
              condition: 'missing',
              vertebratesWhat: 'common shrew',
              vertebratesFate: 'dead, to the museum'
            })
          }
        ] as const
    )
  })
  expect(vertebrates.recorded).toBe(true)
  expect(numberOf(vertebrates.count)).toBe(2)
  expect(numberOf(vertebrates.perThousand)).toBeCloseTo(2000 / 112, 9)
  expect(vertebrates.events).toMatchObject([
    {site: 'M', trap: 'M1', collected: '2026-05-18', what: 'common shrew', fate: 'dead, to the museum'}
  ])
  expect(sites.map((site) => site.vertebrates.events.length)).toEqual([1, 0])
})

test('vertebrates that nobody recorded are not zero', () => {
  const {vertebrates} = tinyResults(twoPlaces)
  expect(vertebrates.recorded).toBe(false)
  expect(numberOf(vertebrates.count)).toBe('vertebrates were not recorded')
})

test('a column filled only now and then carries a caution', () => {
  const {vertebrates} = tinyResults({
    ...twoPlaces,
    visits: twoPlaces.visits!.map((each, index) =>
      index === 0 ? [each[0], each[1], each[2], {vertebratesWhat: 'a newt'}] : each
    )
  })
  expect('caution' in vertebrates.count && vertebrates.count.caution).toBe('not recorded at 7 of 8 exposures')
  expect(numberOf(vertebrates.events[0]!.count)).toBe('their number was not written down')
})
