import {readFileSync} from 'node:fs'
import {expect, test} from 'vitest'
import {charts} from '../../src/charts/index.ts'
import {markdown} from '../../src/formats/index.ts'
import type {ComparisonResult, Results} from '../../src/model/results.ts'
import {composeDocument} from '../../src/report/compose-document.ts'
import {gatherFigures, gatherTables} from '../../src/report/gather.ts'
import {tableDefinitions} from '../../src/report/tables/index.ts'
import {formatProblem} from '../../src/report/template-problem.ts'
import type {Work} from '../../src/report/work.ts'
import {comparisonMethods} from '../../src/results/comparison-methods.ts'
import {diversityMethods} from '../../src/results/diversity-methods.ts'
import {planningMethods} from '../../src/results/planning-methods.ts'
import {rateMethods} from '../../src/results/rate-methods.ts'
import {comparedHabitats, refused} from './compared-habitats.ts'

const template = (name: string) => readFileSync(new URL(`../../templates/${name}`, import.meta.url), 'utf8')
const references = JSON.parse(template('references.json')) as readonly Work[]

function documentOf(results: Results, file: 'chapter.md' | 'season.md' = 'chapter.md'): string {
  const {document, problems} = composeDocument({
    name: file.replace('.md', ''),
    template: {file, text: template(file)},
    results,
    figures: gatherFigures(charts, results),
    tables: gatherTables(tableDefinitions, {results, findings: []}),
    references,
    texts: new Map(),
    findings: [],
    scope: {}
  })
  expect(problems.map(formatProblem)).toEqual([])
  return markdown(document)
}

/** Paragraphs and list items, without tables, pictures and the list of references. */
function proseOf(text: string): readonly string[] {
  const [body = ''] = text.split(/^#+ References$/m)
  return body.split('\n').filter((line) => line !== '' && !/^\s*\||^!\[/.test(line))
}

const chapter = documentOf(comparedHabitats)
const prose = proseOf(chapter)

/** The results with another comparison, of all names and of the group. */
function compared(change: Partial<ComparisonResult>): Results {
  return {
    ...comparedHabitats,
    comparison: {...comparedHabitats.comparison, ...change},
    scopes: comparedHabitats.scopes.map((scope) => ({...scope, comparison: {...scope.comparison, ...change}}))
  }
}

test.each(['chapter.md', 'season.md'] as const)(
  '%s of a study that compares habitats reads without a hole',
  (file) => {
    const [text] = documentOf(comparedHabitats, file).split('# References')
    expect(text).not.toMatch(/undefined|null|NaN|\(\)|\[\]| [,.;](?:\s|$)|,,|\.\.|\(,|, \./m)
  }
)

test('what the design supports comes before any comparison', () => {
  const [design, tested] = ['#### What the design supports', '#### Activity-density compared'].map((head) =>
    chapter.indexOf(head)
  )
  expect(design).toBeGreaterThan(0)
  expect(tested).toBeGreaterThan(design!)
})

test('the activity-densities are compared by their ratio first, then by the test with all that it rests on', () => {
  expect(chapter).toContain(
    '**All names.** The ratio of activity-densities is 0.500 for barley field to oak wood (interval 0.310 to 0.810, adjusted p = 0.012). ' +
      'Over all habitats, the negative binomial model (theta 7.50) gives a likelihood-ratio statistic of 6.25 on 1 degree of freedom, ' +
      'p = 0.057 by permutation (all 35 distinct arrangements tried; smallest possible: p = 0.029), n = 8 sites.'
  )
})

test('no p of a result stands without an effect, an interval or a statistic in its paragraph', () => {
  const withP = prose.filter((paragraph) => /\bp [=<] /.test(paragraph))
  expect(withP.length).toBeGreaterThan(2)
  for (const paragraph of withP) expect(paragraph).toMatch(/interval|R²|indicator value/)
  for (const paragraph of withP) expect(paragraph).toMatch(/n = \d+ sites/)
})

test('every p by permutation stands with the number of arrangements and the smallest p they allow', () => {
  const told = prose.filter((each) => /p [=<] [\d.]+ by permutation \(/.test(each))
  expect(told).not.toEqual([])
  for (const paragraph of told)
    expect(paragraph).toMatch(
      /by permutation \(all 35 distinct arrangements tried; smallest possible: p = 0\.029\)/
    )
})

test('overlap is named only to say that it is no test', () => {
  const sentences = prose.flatMap((each) => each.split(/(?<=\.) /)).filter((each) => /overlap/.test(each))
  expect(sentences).not.toEqual([])
  for (const sentence of sentences) expect(sentence).toContain('no test')
})

test('numbers of species are never ranked in words', () => {
  expect(prose.join('\n')).not.toMatch(
    /\b(?:richer|richest|poorer|poorest|more species than|fewer species than|most species)\b/i
  )
})

test('the test of composition stands with the test of spread and with its cautions', () => {
  const composition = prose.find((paragraph) => paragraph.includes('R²'))
  expect(composition).toContain('The mean Bray-Curtis dissimilarity was 0.200 between sites of one habitat')
  expect(composition).toContain('a share R² of 0.610')
  expect(composition).toContain(
    '0.210 in oak wood and 0.340 in barley field (test of equal spread: F = 1.30 on 1 and 6 degrees of freedom, p = 0.310 by permutation)'
  )
  expect(composition).toContain('finds no difference shows nothing')
  expect(composition).not.toContain('The spread differs')
})

test('where the spread differs, the chapter says that composition may differ by spread', () => {
  const scopes = comparedHabitats.scopes.map((scope) => {
    const {dispersion} = scope.composition
    const spread = {...dispersion, p: {...dispersion.p, value: 0.01}}
    return {...scope, composition: {...scope.composition, dispersion: spread}}
  })
  expect(documentOf({...comparedHabitats, scopes})).toContain(
    'The spread differs, so that the difference in composition may in part be one of spread.'
  )
})

test('values at equal coverage are said to describe the catch of the sites', () => {
  expect(chapter).toContain('At a sample coverage of 0.930')
  expect(chapter).toContain(
    'the pooled catch would be expected to hold 9.50 species (interval 7.00 to 13.0), 5.00 common and 3.00 dominant ones in oak wood'
  )
  expect(chapter).toContain(
    'These numbers describe the pooled catch of the sites sampled and not the habitats.'
  )
})

test('indicator values without p say why', () => {
  const scopes = comparedHabitats.scopes.map((scope) => ({
    ...scope,
    indicators: {...scope.indicators, withheld: true}
  }))
  const text = documentOf({...comparedHabitats, scopes})
  expect(text).toContain(
    'No p is given: the smallest that the design allows (35 distinct arrangements), adjusted for the number of species, would be p = 0.086.'
  )
})

test('a refused comparison gives its reasons in plain words, and no p', () => {
  const text = documentOf(
    refused([
      'no habitat has more than one site, so that nothing tells what is due to the habitat and what to the place'
    ])
  )
  expect(text).toContain(
    'The design does not support a test of differences between habitats, and none is made, because no habitat has more than one site, ' +
      'so that nothing tells what is due to the habitat and what to the place.'
  )
  expect(proseOf(text).join('\n')).not.toMatch(/\bp [=<]|permutation|Holm|significant/)
  expect(text).not.toContain('#### Activity-density compared')
  expect(text).not.toContain('#### Indicator species')
})

test('a study of one habitat compares nothing', () => {
  const [habitat] = comparedHabitats.habitats
  const one = refused(['there are fewer than two habitats'])
  const text = documentOf({
    ...one,
    design: {...one.design, habitats: {...one.design.habitats, value: 1} as typeof one.design.habitats},
    habitats: [habitat!]
  })
  expect(text).toContain('because there are fewer than two habitats')
  expect(text).not.toMatch(/#### (?:Diversity at equal coverage|Composition|Indicator species)/)
})

test('a model that could not be fitted gives the activity-densities and ranks in its place', () => {
  const text = documentOf(
    compared({
      method: 'Kruskal-Wallis',
      message:
        'There is no model of counts, because a habitat caught nothing; the rates are compared by ranks instead.'
    })
  )
  expect(text).toContain(
    '**All names.** The activity-density was 50.0 in oak wood and 25.0 in barley field (individuals per 100 trap-nights). There is no model of counts'
  )
  expect(text).toContain('the Kruskal-Wallis statistic H is 6.25 on 1 degree of freedom')
})

test('more pairs than a sentence can hold are left to the table', () => {
  const [pair] = comparedHabitats.comparison.ratios
  const text = documentOf(compared({ratios: Array.from({length: 10}, () => pair!)}))
  expect(text).toContain('The ratios of activity-densities of all pairs of habitats are in Table')
  expect(text).not.toContain('The ratio of activity-densities is')
})

test('arrangements that were drawn, from more than can be told, are said to be so', () => {
  const {test: tested} = comparedHabitats.comparison
  const permutations = {
    ...tested.permutations,
    exhaustive: false,
    distinct: {...tested.permutations.distinct, value: 9e15},
    tried: {...tested.permutations.tried, value: 999}
  }
  expect(documentOf(compared({test: {...tested, permutations}}))).toContain(
    '(999 drawn at random, of more than a million distinct arrangements; smallest possible: p = 0.029)'
  )
})

test.each([
  ['negative-binomial', 'Lawless'],
  ['poisson-model', 'McCullagh'],
  ['kruskal-wallis', 'Kruskal & Wallis'],
  ['holm', 'Holm (1979)'],
  ['ace', 'Chao & Lee'],
  ['incidence-rarefaction', 'Colwell et al.'],
  ['partition', 'Jost 2007'],
  ['permanova', 'Anderson'],
  ['turnover-nestedness', 'Baselga'],
  ['principal-coordinates', 'Gower'],
  ['non-metric-scaling', 'Kruskal 1964'],
  ['indicator-value', 'Dufrêne'],
  ['great-circle', 'Sinnott'],
  ['half-credit', 'Nelson']
])('the work behind %s is cited when the method was used, and only then', (method, author) => {
  const without = {
    ...comparedHabitats,
    methodsUsed: comparedHabitats.methodsUsed.filter(({id}) => id !== method)
  }
  expect(chapter).toContain(author)
  expect(documentOf(without)).not.toContain(author)
})

test.each([
  ['ratio-interval', 'the interval of a ratio estimate between units (Cochran 1977)'],
  ['poisson-interval', 'the exact one of a Poisson count (Garwood 1936)'],
  ['share-interval', 'a proportion in clusters (Cochran 1977)'],
  ['binomial-interval', 'the exact binomial one (Clopper & Pearson 1934)'],
  ['raised-counts', 'Where only part of a sample was sorted'],
  ['hill-numbers', 'given as Hill numbers (Jost 2006; Chao et al. 2014)'],
  ['coverage', 'Completeness is given as sample coverage'],
  ['chao1', 'extended by Chao1'],
  ['chao2', 'come Chao2, a lower bound too (Chao 1987)'],
  ['ice', 'Lee & Chao 1994'],
  ['jackknife', 'Burnham & Overton 1979'],
  ['asymptotic-diversity', 'Asymptotic diversity of order 1 follows Chao et al. (2013)'],
  ['rarefaction', 'Curves of rarefaction and extrapolation by number of individuals follow'],
  ['assemblage-bootstrap', 'a bootstrap of the estimated assemblage (Chao et al. 2014)'],
  ['equal-coverage', 'set side by side at the largest coverage'],
  ['bray-curtis', 'Bray & Curtis (1957)'],
  ['sorensen', 'Jaccard (Jaccard 1912)'],
  ['shannon', 'Shannon entropy with natural logarithms (Shannon 1948)'],
  ['dispersion', 'spread around the centroid of each habitat (Anderson 2006)'],
  ['planned-coverage', 'Trap-nights for a target coverage come from extrapolation'],
  ['planned-rate', 'Bliss & Fisher 1953; Southwood & Henderson 2000'],
  ['planned-ratio', 'Bolker 2008']
])('the methods text tells of %s when it was used, and only then', (method, words) => {
  const told = (methodsUsed: Results['methodsUsed']) => documentOf({...comparedHabitats, methodsUsed})
  const all = [...comparedHabitats.methodsUsed, {id: method, name: method}]
  expect(told(all)).toContain(words)
  expect(told(all.filter(({id}) => id !== method))).not.toContain(words)
})

/** Told of where another one is, since the two always go together. */
const toldWith: Readonly<Record<string, string>> = {
  'gini-simpson': 'shannon',
  pielou: 'shannon',
  'berger-parker': 'shannon',
  jaccard: 'sorensen',
  'rim-rate': 'defined=catch.rimRate'
}

test('the methods text knows every method that results can rest on', () => {
  const text = template('chapter.md')
  const methods = [...rateMethods, ...diversityMethods, ...comparisonMethods, ...planningMethods]
  const unknown = methods.filter(({id}) => {
    const key = toldWith[id] ?? id
    return !text.includes(key.includes('=') ? key : `path=methodsUsed.${key}`)
  })
  expect(unknown.map(({id}) => id)).toEqual([])
})

test('the appendix says what the catch is without and with the rows set aside', () => {
  expect(chapter).toContain(
    'Of the rows of the catch, three were set aside. Two of them hold a whole count, seven individuals in all. ' +
      'The catch is 23 individuals without them, as everywhere in this chapter, and would be 30 with them (set aside: 23 %).'
  )
})

test('what another season would take is told as an estimate, with its assumptions', () => {
  expect(chapter).toContain(
    'they take rates, clumping and species to stay as they were in this season, and sites to be independent of each other'
  )
  expect(chapter).toContain(
    'If a p of 0.05 or less counts as a difference, the layout of this season would show, in 80 % of seasons like it, ' +
      'an activity-density of barley field, the habitat with the least catch, that is 2.35 times that of the other habitats (all names, 200 seasons simulated).'
  )
  const without = (why: string) => {
    const ratio = {label: 'ratio', kind: 'ratio', notDefined: why} as const
    const {planning} = comparedHabitats
    return documentOf({
      ...comparedHabitats,
      planning: {...planning, detection: {...planning.detection, ratio}}
    })
  }
  expect(without('the smallest p that this layout allows is above the level')).toContain(
    'is not defined for all names, because the smallest p that this layout allows is above the level.'
  )
})
