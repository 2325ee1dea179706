import fc from 'fast-check'
import {expect, test} from 'vitest'
import {checkedResults, numberOf, type Tiny, tinyResults, tinyStudy, twoPlaces} from './tiny-study.ts'

const full: Tiny = {
  ...twoPlaces,
  sites: {
    M: {habitat: 'meadow', latitude: 50, longitude: 8},
    W: {habitat: 'wood', latitude: 50.1, longitude: 8.1}
  },
  visits: twoPlaces.visits!.map(([trap, opened, collected], index) => {
    return [
      trap,
      opened,
      collected,
      {condition: index % 3 === 0 ? 'dry' : 'intact', vertebratesCount: index % 4}
    ] as const
  }),
  catch: twoPlaces.catch!.map(([trap, day, taxon, count, rest], index) => {
    return [trap, day, taxon, count, {...rest, sampleFraction: [1, 0.3, 0.7][index % 3]!}] as const
  })
}

test('the order of rows changes nothing, to the last bit', () => {
  const usable = tinyStudy(full)
  const {study} = usable
  const expected = JSON.stringify(checkedResults(usable))
  const shuffled = fc.record({
    sites: fc.shuffledSubarray([...study.sites], {minLength: study.sites.length}),
    traps: fc.shuffledSubarray([...study.traps], {minLength: study.traps.length}),
    exposures: fc.shuffledSubarray([...study.exposures], {minLength: study.exposures.length}),
    catch: fc.shuffledSubarray([...study.catch], {minLength: study.catch.length}),
    taxa: fc.shuffledSubarray([...study.taxa], {minLength: study.taxa.length})
  })
  const numbered = <Row extends object>(rows: readonly Row[]) => rows.map((each, row) => ({...each, row}))
  fc.assert(
    fc.property(shuffled, (rows) => {
      const reordered = {
        ...study,
        sites: numbered(rows.sites),
        traps: numbered(rows.traps),
        exposures: numbered(rows.exposures),
        catch: numbered(rows.catch),
        taxa: numbered(rows.taxa)
      }
      expect(JSON.stringify(checkedResults({...usable, study: reordered}))).toBe(expected)
    }),
    {numRuns: 30}
  )
})

test('a taxon never caught changes nothing, be it in taxa.csv or counted as zero', () => {
  const expected = tinyResults(full)
  expect(
    tinyResults({
      ...full,
      catch: [...full.catch!, ['W1', '2026-05-18', 'Calosoma sycophanta', 0]],
      taxa: {...full.taxa, 'Calosoma sycophanta': {family: 'Carabidae', rank: 'species', sensitive: 1}}
    })
  ).toEqual(expected)
})

test('computing changes nothing in the study that it is given', () => {
  const usable = tinyStudy(full)
  const before = JSON.stringify(usable.study)
  checkedResults(usable)
  expect(JSON.stringify(usable.study)).toBe(before)
})

test('a study folder with headers only gives results without numbers', () => {
  const results = tinyResults({})
  expect(results.season).toBe('season not recorded')
  expect(results.issued).toBeUndefined()
  expect(numberOf(results.effort.net)).toBe(0)
  expect(results.habitats).toEqual([])
})

test('documents carry the day that study.yaml says, else that of the last collection', () => {
  expect(tinyResults(twoPlaces).issued).toBe('2026-06-01')
  expect(tinyResults({...twoPlaces, settings: {issued: '2026-12-24'}}).issued).toBe('2026-12-24')
})

test('a season over the turn of the year has both years', () => {
  expect(tinyResults(twoPlaces).season).toBe('2026')
  expect(tinyResults({...twoPlaces, visits: [['W1', '2025-12-20', '2026-01-03']], catch: []}).season).toBe(
    '2025 to 2026'
  )
})

test('habitats stand in the order of study.yaml, sites and traps by their ids', () => {
  const {habitats, sites, traps} = tinyResults(twoPlaces)
  expect(habitats.map(({id, label, style}) => [id, label, style])).toEqual([
    ['wood', 'beech wood', 0],
    ['meadow', 'hay meadow', 1]
  ])
  expect(sites.map(({id, style}) => [id, style])).toEqual([
    ['M', 1],
    ['W', 0]
  ])
  expect(traps.map(({id, habitat}) => [id, habitat])).toEqual([
    ['M1', 'meadow'],
    ['M2', 'meadow'],
    ['W1', 'wood'],
    ['W2', 'wood']
  ])
})

test('a row in use that names a trap or site not in use is a defect of ours', () => {
  expect(() => tinyResults({...twoPlaces, traps: {M1: 'M'}})).toThrow('names trap M2, which is not in use')
  expect(() => tinyResults({...twoPlaces, sites: {M: 'meadow'}})).toThrow('its site W is not')
})
