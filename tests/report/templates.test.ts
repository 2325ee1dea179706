import {readFileSync} from 'node:fs'
import {expect, test} from 'vitest'
import {charts} from '../../src/charts/index.ts'
import {markdown} from '../../src/formats/index.ts'
import type {Measure} from '../../src/model/quantity.ts'
import type {Results} from '../../src/model/results.ts'
import {type ComposedDocument, composeDocument} from '../../src/report/compose-document.ts'
import {gatherFigures, gatherTables} from '../../src/report/gather.ts'
import {tableDefinitions} from '../../src/report/tables/index.ts'
import {formatProblem} from '../../src/report/template-problem.ts'
import type {Work} from '../../src/report/work.ts'
import {notDefined, twoHabitats} from './two-habitats.ts'

function templateText(name: string): string {
  return readFileSync(new URL(`../../templates/${name}`, import.meta.url), 'utf8')
}

const references = JSON.parse(templateText('references.json')) as readonly Work[]
const templates = ['chapter.md', 'site.md', 'season.md', 'index.md'] as const

function compose(
  name: string,
  results: Results,
  scope: Readonly<Record<string, unknown>> = {}
): ComposedDocument {
  return composeDocument({
    name: name.replace('.md', ''),
    template: {file: name, text: templateText(name)},
    results,
    figures: gatherFigures(charts, results),
    tables: gatherTables(tableDefinitions, {results, findings: []}),
    references,
    texts: new Map(),
    findings: [],
    scope
  })
}

const documents = [
  {
    name: 'chapter',
    title: 'Methods and results',
    summary: 'for a thesis',
    href: 'chapter.html',
    kind: 'Chapter',
    also: []
  }
]

function composeAll(results: Results): readonly (readonly [name: string, composed: ComposedDocument])[] {
  return [
    ['chapter', compose('chapter.md', results)],
    ['season', compose('season.md', results)],
    ['index', compose('index.md', results, {documents, mainDocuments: documents, siteReports: documents})],
    ...results.sites.map(
      (site) =>
        [
          `site ${site.id}`,
          compose('site.md', results, {site, owner: site.id === 'w1' ? 'Upper Fold Farm' : undefined})
        ] as const
    )
  ]
}

const unknown = (reason: string): Measure => notDefined(reason, 'count')
const noVertebrates = {
  recorded: false,
  count: unknown('vertebrates were not recorded'),
  perThousand: unknown('vertebrates were not recorded'),
  notLooked: unknown('vertebrates were not recorded'),
  events: []
}

/** Only what the required columns tell. */
function withoutAnythingOptional(): Results {
  const {issued: _, stated: __, ...results} = twoHabitats
  const notRecorded = unknown('it is not recorded')
  return {
    ...results,
    stated: {},
    design: {
      ...results.design,
      nearestWithin: notRecorded,
      nearestBetween: notRecorded,
      nearestAny: {smallest: notRecorded, largest: notRecorded}
    },
    protocol: {
      ...results.protocol,
      settlingShortest: notRecorded,
      settlingLongest: notRecorded,
      positionUncertainty: notRecorded,
      trapTypes: [],
      fluids: []
    },
    vertebrates: noVertebrates,
    habitats: results.habitats.map(({vegetation: ___, ...habitat}) => habitat),
    sites: results.sites.map(({locality: ____, ...site}) => ({
      ...site,
      position: {shown: 'not recorded'},
      structure: [],
      removal: {
        recorded: {...site.traps, value: 0},
        notRecorded: site.traps,
        gone: {...site.traps, value: 0}
      },
      worthKnowing: [],
      listed: [],
      vertebrates: noVertebrates
    })),
    taxa: results.taxa.map(({family: ___, authority: ____, englishName: _____, ...taxon}) => taxon),
    scopes: []
  }
}

const studies = [
  ['a study that states much', twoHabitats],
  ['a study with the required columns only', withoutAnythingOptional()]
] as const

const composed = studies.flatMap(([study, results]) =>
  composeAll(results).map(([name, document]) => [name, study, document] as const)
)

test.each(composed)('the %s of %s is composed without a problem', (_name, _study, {problems}) => {
  expect(problems.map(formatProblem)).toEqual([])
})

test.each(composed)('the %s of %s reads without a hole', (_name, _study, {document}) => {
  const text = markdown(document)
  expect(text).not.toMatch(/undefined|null|NaN|\(\)|\[\]| [,.;](?:\s|$)|,,|\.\.|\(,|, \./m)
  expect(text).not.toMatch(
    /(?<![\d,.])1 (?:traps|sites|rounds|individuals|nights|exposures|rows|habitats|findings)\b/
  )
  expect(text).not.toMatch(/\bno of them\b|: \.|\b(?:one|1) were\b/)
})

test('activity-density is never called by the bare words', () => {
  for (const name of templates) {
    const prose = templateText(name).replaceAll(/activity-densit(?:y|ies)|rank-abundance/gi, '')
    expect(prose).not.toMatch(/\b(?:densit(?:y|ies)|abundances?|populations?)\b/i)
  }
})

test('every work that can be cited is cited, and has what a list of references needs', () => {
  const cited = new Set(
    templates
      .flatMap((name) => [...templateText(name).matchAll(/:cited?\[([^\]]+)\]/g)])
      .flatMap(([, keys = '']) => keys.split(' '))
  )
  expect([...cited].sort()).toEqual(references.map(({id}) => id).sort())
  for (const {title, author, issued} of references) {
    expect([title?.length, author?.length, issued?.['date-parts']?.length]).not.toContain(undefined)
  }
})

test('a chapter of habitats that cannot be compared says why in plain words', () => {
  const text = markdown(compose('chapter.md', twoHabitats).document)
  expect(text).toContain('does not support a test of differences between habitats')
  expect(text).toContain('A single site stands for barley field.')
  expect(text).toContain('The habitats differ in fluid too (oak wood: pg; barley field: water).')
  expect(text).not.toMatch(/significant|p = |p < /)
})

test('a site report keeps back what the owner keeps back', () => {
  const [, holt] = twoHabitats.sites
  const text = markdown(compose('site.md', twoHabitats, {site: holt, owner: undefined}).document)
  expect(text).not.toContain('Hidden Hollow')
  expect(text).not.toContain('Carabus intricatus')
  expect(text).toContain('One kind is left out of the list on purpose')
  expect(text).not.toContain('Fold Wood')
})

test('a site report says of each fluid what is usual to say', () => {
  const said = (substance: string) => {
    const fluids = twoHabitats.protocol.fluids.map((fluid) => ({...fluid, stated: {substance}}))
    const results = {...twoHabitats, protocol: {...twoHabitats.protocol, fluids}}
    return markdown(compose('site.md', results, {site: results.sites[0], owner: undefined}).document)
  }
  expect(said('ethylene glycol')).toContain('very poisonous to people, pets and wild animals')
  expect(said('ethanol')).toContain('catch fire easily')
  expect(said('antifreeze')).toContain('For fluids that are often used in such traps')
  expect(said('propylene glycol')).not.toContain('very poisonous')
})
