import {quickExample} from '../example-report.ts'
import {roundDay, species, usualCatch, type WrittenFiles, writtenStudy} from './written-study.ts'

const three = {A1: 'wood', A2: 'wood', B1: 'meadow', B2: 'meadow', C1: 'field', C2: 'field'}
const two = {A1: 'wood', A2: 'wood', A3: 'wood', B1: 'meadow', B2: 'meadow', B3: 'meadow'}
const scope = 'scopes: {carabids: {label: ground beetles, family: Carabidae}}'

/** Studies as unlike each other as a year of real ones: what is said of each must read well all the same. */
export const twentyStudies: Readonly<Record<string, () => WrittenFiles>> = {
  'one site': () => writtenStudy({sites: {A1: 'wood'}}),
  'one trap': () => writtenStudy({sites: {A1: 'wood'}, trapsAtSite: 1}),
  'no catch': () => writtenStudy({sites: two, caught: () => []}),
  'catch all outside the effort': () =>
    writtenStudy({sites: two, visitCells: () => ({condition: 'missing', sample: 'lost'})}),
  'no usable visit': () => writtenStudy({sites: two, visitCells: () => ({condition: 'eaten by a goat'})}),
  'no fluid recorded': () =>
    writtenStudy({
      sites: two,
      settings: `analysis: {replicates: 10, permutations: 99, ${scope}}
trap_types: {cup: {container: plastic cup}}
protocol: {rounds: 5, interval_nights: 10}
`
    }),
  'forty habitats': () =>
    writtenStudy({
      sites: Object.fromEntries(
        Array.from({length: 42}, (_, index) => [`S${index + 1}`, `land${(index % 40) + 1}`])
      ),
      trapsAtSite: 1,
      rounds: 1
    }),
  'one habitat': () => writtenStudy({sites: {A1: 'wood', A2: 'wood', A3: 'wood'}}),
  'one site in each habitat': () => writtenStudy({sites: {A1: 'wood', B1: 'meadow', C1: 'field'}}),
  'a single individual': () =>
    writtenStudy({
      sites: two,
      caught: ({trapNumber, round}) => (trapNumber === 0 && round === 0 ? [1] : [])
    }),
  'all of them singletons': () =>
    writtenStudy({
      sites: two,
      caught: ({trapNumber, round}) =>
        species.map((_, index) => (round === 0 && trapNumber === index ? 1 : 0))
    }),
  'one round': () => writtenStudy({sites: two, rounds: 1}),
  'everything unsorted': () =>
    writtenStudy({sites: two, caught: () => [], visitCells: () => ({sample: 'unsorted'})}),
  'all traps of a habitat lost': () =>
    writtenStudy({
      sites: three,
      caught: (visit) => (visit.habitat === 'field' ? [] : usualCatch(visit)),
      visitCells: ({habitat}): Readonly<Record<string, string>> =>
        habitat === 'field' ? {condition: 'missing', sample: 'lost'} : {}
    }),
  'pooled catches': () => pooled(writtenStudy({sites: two})),
  'raised counts': () => writtenStudy({sites: two, catchCells: () => ({sample_fraction: '0.25'})}),
  'a wide matrix': () => wide(writtenStudy({sites: two})),
  'old data with effort by site': () => oldData(false),
  'old data with one site and the number of traps': () => oldData(true),
  'clock times': () =>
    writtenStudy({
      sites: two,
      visitCells: ({round}) => ({
        opened: `${roundDay(round)}T15:40`,
        collected: `${roundDay(round + 1)}T15:10`
      }),
      catchCells: ({round}) => ({collected: `${roundDay(round + 1)}T15:10`})
    }),
  'private coordinates': () =>
    writtenStudy({
      sites: two,
      siteCells: (_, index) => ({
        latitude: `51.2${index}34`,
        longitude: `9.1${index}87`,
        coordinates_shown: index < 4 ? 'none' : '0.1',
        owner: `Farm ${index + 1}`
      }),
      settings: `analysis: {replicates: 10, permutations: 99, ${scope}}
privacy: {coordinates: none}
fluids: {pg: {substance: propylene glycol, dilution: '1:1'}, salt: {substance: salt water}}
`,
      trapCells: (trap) => ({fluid: trap.endsWith('1') ? 'pg' : 'salt'})
    }),
  'words only where they must be': () =>
    writtenStudy({sites: two, settings: 'analysis: {replicates: 10, permutations: 99}\n'}),
  'the example': quickExample
}

/** Catches thrown together in the field: of a site and a round, and of no trap. */
function pooled(files: WrittenFiles): WrittenFiles {
  const sums = new Map<string, number>()
  const [, ...rows] = (files.get('catch.csv') ?? '').trim().split('\n')
  for (const row of rows) {
    const [trap = '', collected = '', taxon = '', count = ''] = row.split(',')
    const key = [trap.split('-')[0], roundOf(collected), taxon].join(',')
    sums.set(key, (sums.get(key) ?? 0) + Number(count))
  }
  const lines = [...sums].map(([key, count]) => `,,${key},${count},2`)
  const visits = (files.get('visits.csv') ?? '')
    .trim()
    .split('\n')
    .map((row, index) => (index === 0 ? `${row},round` : `${row},${roundOf(row.split(',')[2] ?? '')}`))
  return new Map([
    ...files,
    ['catch.csv', ['trap_id,collected,site_id,round,taxon,count,pooled_traps', ...lines, ''].join('\n')],
    ['visits.csv', `${visits.join('\n')}\n`]
  ])
}

function roundOf(collected: string): string {
  const round = [1, 2, 3].find((number) => roundDay(number) === collected)
  return `R${round ?? 0}`
}

/** The same catch with a column for each species. */
function wide(files: WrittenFiles): WrittenFiles {
  const counts = new Map<string, Map<string, string>>()
  const [, ...rows] = (files.get('catch.csv') ?? '').trim().split('\n')
  for (const row of rows) {
    const [trap = '', collected = '', taxon = '', count = ''] = row.split(',')
    const key = `${trap},${collected}`
    counts.set(key, (counts.get(key) ?? new Map<string, string>()).set(taxon, count))
  }
  const lines = [...counts].map(([key, of]) =>
    [key, ...species.map((taxon) => of.get(taxon) ?? '0')].join(',')
  )
  return new Map([
    ...files,
    ['catch.csv', [['trap_id', 'collected', ...species].join(','), ...lines, ''].join('\n')]
  ])
}

/** Nothing but sites with one figure of effort each, and what was caught there. */
function oldData(isSmall: boolean): WrittenFiles {
  const sites: Readonly<Record<string, string>> = isSmall ? {A1: 'wood'} : {...two, B4: 'meadow'}
  const written = writtenStudy({
    sites,
    siteCells: (_, index) => ({
      trap_nights: index === 6 ? '' : String(400 + 10 * index),
      ...(isSmall && {traps: '5'})
    })
  })
  const rows = Object.keys(sites).flatMap((site, index) =>
    usualCatch({site, habitat: '', trap: '', trapNumber: index, round: 1}).flatMap((count, at) =>
      count === 0 || index === 6 ? [] : [`${site},${species[at]},${count}`]
    )
  )
  const kept = [...written].filter(([file]) => file !== 'traps.csv' && file !== 'visits.csv')
  return new Map([...kept, ['catch.csv', ['site_id,taxon,count', ...rows, ''].join('\n')]])
}
