import {expect, test} from 'vitest'
import type {Measure} from '../../src/model/quantity.ts'
import type {ComparisonResult} from '../../src/model/results.ts'
import {studentQuantile} from '../../src/statistics/special-functions.ts'
import {type MadeHabitats, type MadeOptions, madeStudy, twoHabitats} from './made-study.ts'
import {numberOf, tinyResults} from './tiny-study.ts'

function compare(habitats: MadeHabitats, options?: MadeOptions): ComparisonResult {
  return tinyResults(madeStudy(habitats, options)).comparison
}

const intervalOf = (measure: Measure) => ('interval' in measure ? measure.interval : undefined)

test('habitats with several sites are compared, one row a site', () => {
  const {supported, method, units, habitats, residuals, ratios, residualDegreesOfFreedom} =
    compare(twoHabitats)
  expect(supported).toBe(true)
  expect(['negative binomial', 'Poisson']).toContain(method)
  expect(numberOf(units)).toBe(6)
  expect(habitats.map(({id, individuals}) => [id, numberOf(individuals)])).toEqual([
    ['meadow', 113],
    ['wood', 198]
  ])
  expect(residuals.map(({id}) => id)).toEqual(['meadow1', 'meadow2', 'meadow3', 'wood1', 'wood2', 'wood3'])
  expect(numberOf(residualDegreesOfFreedom)).toBe(4)
  expect(ratios).toHaveLength(1)
  expect(numberOf(ratios[0]!.ratio)).toBeCloseTo(198 / 113, 3)
  expect(intervalOf(ratios[0]!.ratio)?.method).toContain('approximate')
})

test('two habitats of three sites cannot have p below 0.1, and that is said', () => {
  const {test: tested} = compare(twoHabitats)
  expect(numberOf(tested.permutations.distinct)).toBe(10)
  expect(numberOf(tested.permutations.floor)).toBeCloseTo(0.1)
  expect(tested.permutations.exhaustive).toBe(true)
  expect(numberOf(tested.p)).toBeCloseTo(0.1)
  expect(numberOf(tested.degreesOfFreedom)).toBe(1)
})

test('the most influential site of a ratio is named, with the ratio without it', () => {
  const {ratios} = compare({...twoHabitats, wood: [[40], [45], [400]]})
  expect(ratios[0]!.influential?.id).toBe('wood3')
  expect(numberOf(ratios[0]!.without)).toBeLessThan(numberOf(ratios[0]!.ratio) as number)
})

test('a habitat with a single site is described and not compared, and the reason is given in plain words', () => {
  const comparison = compare({wood: twoHabitats.wood!.slice(0, 1), meadow: twoHabitats.meadow!.slice(0, 1)})
  expect(comparison.supported).toBe(false)
  expect(comparison.reasons).toEqual([
    'no habitat has more than one site, so that nothing tells what is due to the habitat and what to the place'
  ])
  expect(numberOf(comparison.test.p)).toContain('no habitat has more than one site')
  expect([comparison.ratios, comparison.habitats, comparison.residuals]).toEqual([[], [], []])
})

test('among three habitats the one with a single site is left out, named, and the others are compared', () => {
  const {supported, leftOut, habitats, notes} = compare({...twoHabitats, heath: [[1, 2, 3, 4, 5, 6]]})
  expect(supported).toBe(true)
  expect(leftOut).toEqual([{id: 'heath', label: 'heath', style: 0, reason: 'it has a single site'}])
  expect(habitats.map(({id}) => id)).toEqual(['meadow', 'wood'])
  expect(notes).toEqual(['Not compared: heath, because it has a single site.'])
})

test('only one replicated habitat is no comparison', () => {
  const {reasons} = compare({...twoHabitats, wood: twoHabitats.wood!.slice(0, 1)})
  expect(reasons[0]).toContain('only one habitat (meadow) has more than one site')
})

test('habitats trapped in different periods are compared in the rounds that they share, and that is said', () => {
  const {supported, rounds, roundsLeftOut, notes, habitats} = compare(twoHabitats, {
    rounds: 3,
    roundsOf: (habitat) => (habitat === 'wood' ? [0, 1] : [1, 2])
  })
  expect(supported).toBe(true)
  expect([rounds, roundsLeftOut]).toEqual([['R2'], ['R1', 'R3']])
  expect(notes[0]).toBe(
    'The habitats were not sampled in the same periods, so only the rounds that they share are compared: R2. Left out: R1, R3.'
  )
  // The wood caught everything in its first round, which the meadow lacks.
  expect(habitats.map(({individuals, net}) => [numberOf(individuals), numberOf(net)])).toEqual([
    [113, 42],
    [0, 42]
  ])
})

test('habitats that share no round are not compared', () => {
  const {reasons} = compare(twoHabitats, {roundsOf: (habitat) => (habitat === 'wood' ? [0] : [1])})
  expect(reasons).toEqual([
    'no round was sampled in every habitat, so that habitat and time of year cannot be told apart'
  ])
})

test('trap types that differ in line with habitat forbid the comparison, and the rates stay', () => {
  const tiny = madeStudy(twoHabitats)
  const traps = Object.fromEntries(
    Object.keys(tiny.sites!).map((siteId) => {
      return [`${siteId}-1`, {siteId, trapType: siteId.startsWith('wood') ? 'cup' : 'jar'}]
    })
  )
  const {comparison, habitats, design} = tinyResults({...tiny, traps})
  expect(comparison.supported).toBe(false)
  expect(comparison.reasons[0]).toContain('the trap type differs in line with habitat')
  expect(design.supportsComparison).toBe(false)
  expect(habitats.every(({catch: {rate}}) => typeof numberOf(rate) === 'number')).toBe(true)
})

test('a habitat that caught nothing leaves no model, and ranks are compared instead', () => {
  const {method, message, test: tested, ratios} = compare({...twoHabitats, meadow: [[0], [0], [0]]})
  expect(method).toBe('Kruskal-Wallis')
  expect(message).toBe(
    'There is no model of counts, because a level of a factor caught nothing, so its rate ratio has no finite estimate; the rates are compared by ranks instead.'
  )
  expect(numberOf(tested.p)).toBeCloseTo(0.1)
  expect(numberOf(ratios[0]!.ratio)).toContain('caught nothing')
})

test('no catch at all gives a message and no test', () => {
  const {supported, method, message, test: tested} = compare({wood: [[0], [0]], meadow: [[0], [0]]})
  expect(supported).toBe(true)
  expect(method).toBe('none')
  expect(message).toBe('There is no model of counts, because nothing was caught anywhere.')
  expect(numberOf(tested.p)).toBe('nothing was caught anywhere')
})

test('catches that spread no more than Poisson counts make a Poisson model, and say so', () => {
  const {method, message, theta} = compare({wood: [[50], [50], [50]], meadow: [[25], [25], [25]]})
  expect(method).toBe('Poisson')
  expect(message).toContain('no more than Poisson')
  expect(numberOf(theta)).toContain('no more than Poisson')
})

test('blocks enter the model, and habitats change places within them only', () => {
  const {
    blocks,
    notes,
    coefficients,
    test: tested
  } = compare(twoHabitats, {
    blockOf: (_, index) => `farm ${index + 1}`
  })
  expect(numberOf(blocks)).toBe(3)
  expect(notes).toEqual(['Habitats are compared within blocks, of which there are 3.'])
  expect(coefficients.map(({term}) => term)).toEqual(['intercept', 'wood', 'block farm 2', 'block farm 3'])
  expect(numberOf(tested.permutations.distinct)).toBe(4)
})

test('blocks that hold one habitat each forbid the comparison', () => {
  const {reasons} = compare(twoHabitats, {blockOf: (habitat) => habitat})
  expect(reasons).toEqual([
    'every block holds one habitat only, so that habitat and place cannot be told apart'
  ])
})

test('blocks that are on record for some sites only stay out of the model, and that is said', () => {
  const {blocks, notes} = compare(twoHabitats, {
    blockOf: (_, index) => (index === 0 ? undefined : `farm ${index}`)
  })
  expect(numberOf(blocks)).toBe(0)
  expect(notes[0]).toContain('on record for some of the sites only')
})

test('traps are compared only where study.yaml says so, and the notes say who decided it', () => {
  const tiny = madeStudy({wood: [[8, 3]], meadow: [[2, 9]]})
  const traps = {'wood1-1': 'wood1', 'wood1-2': 'wood1', 'meadow1-1': 'meadow1', 'meadow1-2': 'meadow1'}
  const visits = Object.keys(traps).map((trap) => [trap, '2026-05-01', '2026-05-15'] as const)
  const more = {...tiny, traps, visits}
  expect(tinyResults(more).comparison.supported).toBe(false)
  const settings = {...tiny.settings, analysis: {unit: 'trap', unit_reason: 'they stand far apart'} as const}
  const {comparison} = tinyResults({...more, settings})
  expect(comparison.supported).toBe(true)
  expect(numberOf(comparison.units)).toBe(4)
  expect(comparison.notes.join(' ')).toContain(
    'Basis of this choice: the authors chose so in study.yaml: they stand far apart.'
  )
})

test('counts sorted from part of a sample go into the model as counted, with the effort that was sorted', () => {
  const tiny = madeStudy({wood: [[40], [44]], meadow: [[20], [30]]})
  const half = tiny.catch!.map(([trap, day, taxon, count]) => {
    const wood = trap.startsWith('wood')
    return [trap, day, taxon, wood ? count / 2 : count, wood ? {sampleFraction: 0.5} : {}] as const
  })
  // Only the round with catch was sorted in part.
  const visits = tiny.visits!.filter(([, , collected]) => collected === '2026-05-15')
  const ratioOf = (rows: NonNullable<typeof tiny.catch>) =>
    numberOf(tinyResults({...tiny, visits, catch: rows}).comparison.ratios[0]!.ratio) as number
  expect(ratioOf(half)).toBeCloseTo(84 / 50, 3)
  expect(ratioOf(tiny.catch!)).toBeCloseTo(84 / 50, 3)
})

test('every scope has a comparison of its own catch', () => {
  const results = tinyResults({
    ...madeStudy(twoHabitats),
    settings: {
      no_catch_rows: 'empty',
      analysis: {scopes: {one: {taxa: ['Genus speciesaa']}, all: {}}}
    }
  })
  expect(
    results.scopes.map(({id, comparison}) => [
      id,
      comparison.habitats.map((each) => numberOf(each.individuals))
    ])
  ).toEqual([
    ['one', [10, 139]],
    ['all', [113, 198]]
  ])
})

test('the degrees of freedom of a ratio are those of its interval, sites less parameters, blocks among them', () => {
  const {ratios, residualDegreesOfFreedom} = compare(
    {
      wood: [[40], [25], [61], [33]],
      meadow: [[14], [9], [30], [11]]
    },
    {blockOf: (_, index) => `block ${index}`}
  )
  expect(numberOf(residualDegreesOfFreedom)).toBe(8 - 2 - 3)
  const [{ratio, degreesOfFreedom}] = ratios as [ComparisonResult['ratios'][number]]
  expect(numberOf(degreesOfFreedom)).toBe(8 - 2 - 3)
  const {value, standardError} = ratio as {value: number; standardError: number}
  const reach = studentQuantile(0.975, 3) * (standardError / value)
  expect(intervalOf(ratio)?.high).toBeCloseTo(value * Math.exp(reach), 9)
})
