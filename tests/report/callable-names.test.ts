import {expect, test} from 'vitest'
import {callableNames} from '../../src/report/callable-names.ts'
import {lookUp, rootScope} from '../../src/report/scope.ts'
import {wordsFrom} from './compose.ts'
import {smallResults} from './small-results.ts'
import {twoHabitats} from './two-habitats.ts'

for (const [study, results] of Object.entries({smallResults, twoHabitats})) {
  test(`every name listed for ${study} can be looked up, and those with a value are found`, () => {
    const scope = rootScope(results)
    const names = callableNames(results)
    expect(names.length).toBeGreaterThan(100)
    const wrong = names.filter(({path, value}) => {
      const {status} = lookUp(scope, path)
      return value === undefined ? status === 'unknown' : status !== 'found'
    })
    expect(wrong).toEqual([])
    expect(new Set(names.map(({path}) => path)).size).toBe(names.length)
  })
}

test('a number stands there as the directive named beside it prints it', () => {
  const names = new Map(callableNames(smallResults).map((name) => [name.path, name]))
  const net = names.get('effort.net')
  expect(net?.directives).toContain('amount')
  expect(net?.meaning).not.toBe('')
  expect(net?.value?.replace(/ \(.*/, '')).toBe(wordsFrom(':amount[effort.net]'))
})

test('of two things with the same id the second is entered by its number', () => {
  const paths = callableNames({
    species: [
      {id: 'oak', n: 1},
      {id: 'oak', n: 2}
    ]
  }).map(({path}) => path)
  expect(paths).toContain('species.oak.n')
  expect(paths).toContain('species.1.n')
})

test('short names come first, and what was computed before what was stated', () => {
  const paths = callableNames(smallResults).map(({path}) => path)
  const depths = paths.map((path) => path.split('.').length)
  expect(depths).toEqual([...depths].sort((a, b) => a - b))
  const ofTwo = paths.filter((path) => path.split('.').length === 2)
  const firstStated = ofTwo.findIndex((path) => path.startsWith('stated'))
  expect(ofTwo.slice(firstStated).every((path) => path.startsWith('stated'))).toBe(true)
})

test('what is for the owner alone is named without its value, and a long text is cut', () => {
  const names = new Map(
    callableNames({
      sites: [{id: 'w1', locality: 'Hidden Hollow'}],
      stated: {limitations: 'word '.repeat(40)}
    }).map(({path, value}) => [path, value])
  )
  expect(names.get('sites.w1.locality')).toBe('for the site report alone')
  expect(names.get('stated.limitations')).toMatch(/^(word ){16}…$/)
})
