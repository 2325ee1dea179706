import {expect, test} from 'vitest'
import {numberOf, type Tiny, tinyResults} from './tiny-study.ts'

const days = ['2026-05-01', '2026-05-15', '2026-05-29', '2026-06-12'] as const

const season: Tiny = {
  settings: {no_catch_rows: 'empty'},
  sites: {W: 'wood'},
  traps: {W1: 'W'},
  visits: [0, 1, 2].map((index) => ['W1', days[index]!, days[index + 1]!, {round: `R${index + 1}`}] as const),
  catch: [
    ['W1', days[2], 'Abax ater', 4],
    ['W1', days[3], 'Abax ater', 9],
    ['W1', days[1], 'Carabus nemoralis', 9]
  ]
}

test('the season of a common species is told by rounds, as opened to collected', () => {
  const {season: species} = tinyResults(season).scopes[0]!
  expect(species.map(({taxon}) => taxon)).toEqual(['Abax ater'])
  const [abax] = species
  expect(abax!.first).toMatchObject({round: 'R2', opened: '2026-05-15', collected: '2026-05-29'})
  expect(abax!.last.round).toBe('R3')
  expect(abax!.highest).toMatchObject({round: 'R3', opened: '2026-05-29', collected: '2026-06-12'})
  expect(numberOf(abax!.highest.rate)).toBeCloseTo((100 * 9) / 14)
  expect(numberOf(abax!.rounds)).toBe(2)
  expect(abax!.rates).toEqual([0, 28.5714, 64.2857])
})

test('the highest round is that of the highest activity-density, not of the largest catch', () => {
  const {season: species} = tinyResults({
    ...season,
    traps: {W1: 'W', W2: 'W'},
    visits: [...season.visits!, ['W2', days[2], days[3], {round: 'R3'}]],
    catch: [
      ['W1', days[2], 'Abax ater', 8],
      ['W1', days[3], 'Abax ater', 9]
    ]
  }).scopes[0]!
  expect(species[0]!.highest.round).toBe('R2')
})

test('a round in which nothing counts has no rate', () => {
  const {season: species} = tinyResults({
    ...season,
    visits: season.visits!.map(([trap, opened, collected, rest], index) => {
      return [
        trap,
        opened,
        collected,
        index === 0 ? {...rest, condition: 'missing', sample: 'lost'} : rest!
      ] as const
    }),
    catch: season.catch!.slice(0, 2)
  }).scopes[0]!
  expect(species[0]!.rates).toEqual([null, 28.5714, 64.2857])
})
