import {describe, expect, test} from 'vitest'
import {type Prose, proseInCode, proseInTemplates} from './prose-in-code.ts'

const templates = proseInTemplates()
const code = ['charts', 'report', 'rules', 'results', 'cli', 'parse', 'archive', 'formats', 'model'].flatMap(
  (folder) => proseInCode(`src/${folder}`)
)
const all = [...templates, ...code]

/** Passages around a word, where nothing allows it. */
function passages(prose: readonly Prose[], word: RegExp, allowed: RegExp): readonly string[] {
  return prose.flatMap(({file, text}) => {
    const rest = text.replace(allowed, '')
    return [...rest.matchAll(word)].map(
      ({index}) => `${file}: …${rest.slice(Math.max(0, index - 40), index + 50)}…`
    )
  })
}

test('there is prose to read in templates and code', () => {
  expect(templates.length).toBeGreaterThan(150)
  expect(code.length).toBeGreaterThan(800)
})

describe('a catch is never called more than it is', () => {
  test('density is activity-density, and abundance a rank or the basis of an estimate', () => {
    const allowed = /activity-densit(y|ies)|rank-abundance|abundance-based/gi
    expect(passages(all, /densit|abundan/gi, allowed)).toEqual([])
  })

  test('nothing is significant or proven', () => {
    expect(passages(all, /\bsignifican|\bprove[sdn]?\b/gi, /significant figures/gi)).toEqual([])
  })

  test('raw numbers of species are ranked nowhere', () => {
    const words =
      /\brichest\b|\bspecies-rich|\bmost species\b|\bpoorest\b|\bmore species than\b|\brank(s|ed|ing)? (the )?(sites|habitats)/gi
    expect(passages(all, words, /do not rank sites/gi)).toEqual([])
  })
})

describe('a site report', () => {
  const site = templates.filter(({file}) => file === 'templates/site.md')

  test('has no p and no test', () => {
    expect(passages(site, /p-value|\bp [=<]|\.p\b|adjustedP|\btest(s|ed)?\b|statistic/g, /(?!)/g)).toEqual([])
  })

  test('has no bare index', () => {
    const words = /hill\.|shannon|simpson|chao|coverage|\bindex\b|\bindices\b/gi
    // The number of kinds that would be as varied if all were caught equally often is told in just these words.
    const told = /\b(caught|group\.study|scopes\.0\.study)\.hill\.q1\.observed/g
    expect(passages(site, words, told)).toEqual([])
    const sentences = site.filter(({text}) => text.includes('.hill.q1.'))
    expect(sentences).toHaveLength(1)
    expect(sentences[0]?.text).toContain('As varied as if we had caught equally many of')
  })

  test('calls animals and kinds what their owner would call them', () => {
    expect(
      passages(
        site,
        /\btaxa\b|\btaxon\b|\bspecimens?\b|\bindividuals?\b|\bassemblage\b/gi,
        /:[a-z]+\[[^\]]*\]|\{[^}]*\}/g
      )
    ).toEqual([])
  })
})
