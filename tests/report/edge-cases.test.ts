import {beforeAll, describe, expect, test} from 'vitest'
import {readAssets} from '../../src/files/read-assets.ts'
import {type Assets, buildReport} from '../../src/pipeline.ts'
import {usualCatch, type WrittenFiles, writtenStudy} from '../language/written-study.ts'
import {memorySource} from '../memory-source.ts'

let assets: Assets

beforeAll(async () => {
  assets = await readAssets()
})

/** The chapter without its pictures and references: sentences, tables and their notes. */
async function chapterOf(files: WrittenFiles): Promise<string> {
  const report = await buildReport(memorySource(files), assets, {only: ['chapter']})
  if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
  expect([...report.outputs.keys()]).toEqual(expect.arrayContaining(['chapter.md', 'results.json']))
  expect(String(report.outputs.get('results.json'))).not.toMatch(/NaN|Infinity|null,/)
  const [body = ''] = String(report.outputs.get('chapter.md')).split(/^#+ References$/m)
  expect(body).not.toMatch(/NaN|Infinity|undefined(?! )|\bnull\b/)
  return body.replaceAll(/^!\[.*$/gm, '')
}

const wood = {A1: 'wood'}
const two = {A1: 'wood', A2: 'wood', A3: 'wood', B1: 'meadow', B2: 'meadow', B3: 'meadow'}
const firstCatch =
  (counts: readonly number[]) =>
  ({trapNumber, round}: {readonly trapNumber: number; readonly round: number}) =>
    trapNumber === 0 && round === 0 ? counts : []

/** The study, and what its chapter must say of it. */
const cases: Readonly<Record<string, readonly [() => WrittenFiles, ...(string | RegExp)[]]>> = {
  'no catch at all': [
    () => writtenStudy({sites: two, caught: () => []}),
    'No individual was caught within the effort.',
    'Nothing was caught within the effort, so that there is nothing to compare.'
  ],
  'one individual': [
    () => writtenStudy({sites: wood, caught: firstCatch([1])}),
    /Sample coverage is not defined, because one individual says nothing about the species that were missed\./,
    /There was one habitat only|fewer than two habitats/
  ],
  'one species': [
    () => writtenStudy({sites: two, caught: ({round}) => [3 + round]}),
    /one species among/i,
    /Sample coverage was 1\.000/
  ],
  'all singletons': [
    () => writtenStudy({sites: wood, caught: firstCatch([1, 1, 1, 1, 1])}),
    /Sample coverage is not defined, because every species was caught only once\./,
    /Not defined, because every rare species was caught only once/
  ],
  'no singletons': [
    () => writtenStudy({sites: wood, caught: firstCatch([9, 4, 3, 2])}),
    /none of them caught only once and one twice/,
    /Chao1 gives a lower bound of (?:4|4\.00) species/
  ],
  'no doubletons': [
    () => writtenStudy({sites: wood, caught: firstCatch([9, 4, 3, 1, 1])}),
    /two of them caught only once and none twice/,
    /rests on (?:0|no) species caught twice; one more such species would make it/
  ],
  'one site': [
    () => writtenStudy({sites: wood}),
    'With a single site, the interval holds counting error only and is no range for the habitat.',
    /A single site stands for|one habitat only|fewer than two habitats/
  ],
  'one round': [
    () => writtenStudy({sites: wood, rounds: 1, caught: firstCatch([9, 4, 3, 1, 1])}),
    /Not defined, because the jackknife leaves out one unit of at least two/
  ],
  'zero effort': [
    () => writtenStudy({sites: two, visitCells: () => ({condition: 'missing', sample: 'lost'})}),
    /The activity-density is not defined, because no trap-nights count here\./,
    /no trap-nights count in any habitat/
  ],
  'all traps of a habitat lost': [
    () =>
      writtenStudy({
        sites: {...two, C1: 'field', C2: 'field'},
        caught: (visit) => (visit.habitat === 'field' ? [] : usualCatch(visit)),
        visitCells: ({habitat}): Readonly<Record<string, string>> =>
          habitat === 'field' ? {condition: 'missing', sample: 'lost'} : {}
      }),
    /field land, because none of its trap-nights count/,
    /The activity-density is not defined, because no trap-nights count here\./
  ],
  'a million individuals': [
    () =>
      writtenStudy({
        sites: wood,
        caught: firstCatch([600_000, 250_000, 100_000, 40_000, 8_000, 1_500, 400, 98, 1, 1])
      }),
    /1,000,000 individuals/,
    /Sample coverage was 1\.000/
  ]
}

describe.each(Object.entries(cases))('the chapter of a study with %s', (_, [write, ...said]) => {
  test('says in words what is not defined, and why', async () => {
    const chapter = await chapterOf(write())
    for (const words of said) expect(chapter).toMatch(words)
  }, 60_000)
})

test('with one site a habitat the chapter says in plain words why nothing is tested, and prints no p', async () => {
  const chapter = await chapterOf(writtenStudy({sites: {A1: 'wood', B1: 'meadow', C1: 'field'}}))
  expect(chapter).toContain(
    'The design does not support a test of differences between habitats, and none is made, because no habitat has more than one site, so that nothing tells what is due to the habitat and what to the place.'
  )
  expect(chapter).toContain(
    'they are subsamples of the place and not replicates of the habitat (Hurlbert 1984)'
  )
  // The table of findings may speak of p; the sentences and the other tables have none.
  expect(chapter.replaceAll(/^.*no permutation test can go below.*$/gm, '')).not.toMatch(
    /\bp [=<] ?0?\.|by permutation/
  )
  for (const cited of ['Anderson 2001', 'Edgington', 'Dufrêne', 'Lawless', 'Holm', 'Bolker'])
    expect(chapter).not.toContain(cited)
})
