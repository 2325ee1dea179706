import {expect, test} from 'vitest'
import {blocksOf, composed, wordsFrom} from './compose.ts'
import {smallResults} from './small-results.ts'

test.each([
  [':value[effort.net]', '240'],
  [':value[catch.individuals]', '1,593'],
  [':value[seed]', '1'],
  [':value[confidence]', '0.95'],
  [':value[scopes.carabidae.study.chao1]', 'not defined (no species was caught once)'],
  [':amount[habitats.oak.traps]{words=yes start=yes}', 'One trap'],
  [':amount[habitats.1.traps]', '12 traps'],
  [':amount[catch.individuals]', '1,593 individuals'],
  [':interval[habitats.oak.catch.rate]', '41.1 to 67.2'],
  [':method[habitats.oak.catch.rate]', 'bootstrap of sites'],
  [':why[scopes.carabidae.study.chao1]', 'no species was caught once'],
  [':text[stated.title]', 'Beetles of Ash | Elm'],
  [':text[stated.trap_types.cup.rim_diameter_mm] mm', '66 mm'],
  [':text[stated.thanks]', 'A & B (first) and others'],
  [':sentence[stated.limitations]', 'The summer was dry.'],
  ['Told: :sentence[stated.limitations]{start=no}', 'Told: the summer was dry.'],
  [':sentence[stated.limitations]{start=no end=no}, they say', 'the summer was dry, they say'],
  [':date[issued]', '1 October 2026'],
  [':dates[protocol.firstOpened]{to=protocol.lastCollected}', '28 May to 11 June 2026'],
  [':list[design.singleSiteHabitats]', 'oak and ash'],
  [':list[habitats]{of=label}', 'Oak wood and Ash wood'],
  [':list[habitats]{of=traps}', '1 and 12'],
  [':joined[:text[h.label] (:value[h.traps])]{each=habitats as=h}', 'Oak wood (1) and Ash wood (12)'],
  [':joined[:text[h.id]]{each=habitats as=h with=";"}', 'oak; ash'],
  [':plural[habitats.oak.traps]{one=was many=were}', 'was'],
  [':plural[habitats.ash.traps]{one=was many=were}', 'were'],
  [':plural[habitats]{one=is many="are not"}', 'are not']
])('%s prints %s', (template, words) => {
  expect(wordsFrom(template)).toBe(words)
})

test('the directives of a taxon put its name in italics by its rank', () => {
  const {document} = composed(':taxon[taxa.0] :taxon[taxa.1] :taxon[taxa.2.taxon]')
  expect(document.tree.children[0]).toEqual({
    type: 'paragraph',
    children: [
      {type: 'emphasis', children: [{type: 'text', value: 'Carabus nemoralis'}]},
      {type: 'text', value: ' Linyphiidae '},
      {type: 'emphasis', children: [{type: 'text', value: 'Amara'}]}
    ]
  })
})

test.each([
  ['path=effort.net', true],
  ['path=effort.unsorted', false],
  ['path=stated.funding', false],
  ['path=design.supportsComparison', false],
  ['path=rounds', false],
  ['path=habitats', true],
  ['path=scopes.carabidae.study.chao1', false],
  ['not=stated.funding', true],
  ['not=effort.net', false],
  ['path=design.unit is=site', true],
  ['path=design.unit isnt=site', false],
  ['path=stated.funding isnt=site', true],
  ['path=effort.unsorted is=0', true],
  ['path=design.supportsComparison is=false', true],
  ['path=habitats above=1', true],
  ['path=habitats above=2', false],
  ['path=effort.net below=241 above=239', true],
  ['path=scopes.carabidae.study.chao1 below=5', false],
  ['defined=effort.unsorted', true],
  ['defined=scopes.carabidae.study.chao1', false],
  ['undefined=scopes.carabidae.study.chao1', true],
  ['undefined=stated.funding', true],
  ['interval=catch.rate', true],
  ['interval=effort.net', false],
  ['caution=effort.net', false],
  ['path=effort.net not=stated.funding defined=effort.unsorted', true],
  ['path=effort.net not=stated.title', false]
])('given {%s} is %s', (condition, holds) => {
  expect(wordsFrom(`:given[yes]{${condition}}.`)).toBe(holds ? 'yes.' : '.')
  expect(blocksOf(`:::given{${condition}}\nyes\n:::`)).toEqual(holds ? ['yes'] : [])
})

test('each tells every item, with its number and whether it is first or last', () => {
  const template =
    ':::each{in=habitats as=h}\n:value[hNumber] :text[h.label]:given[ first]{path=hFirst}:given[ last]{path=hLast}\n:::'
  expect(blocksOf(template)).toEqual(['1 Oak wood first', '2 Ash wood last'])
})

test('each within each sees both names', () => {
  const template = '::::each{in=habitats as=h}\n:::each{in=taxa as=t}\n:text[h.id] :text[t.taxon]\n:::\n::::'
  expect(blocksOf(template)).toHaveLength(6)
  expect(blocksOf(template)[5]).toBe('ash Amara')
})

test('items of each stand in one list', () => {
  const {document} = composed(':::each{in=habitats as=h}\n- :text[h.id]\n:::\n\n- last')
  expect(document.tree.children).toHaveLength(1)
})

test('figures and tables are numbered as they come, and can be referred to before they stand', () => {
  const template =
    'See :see[figure-rarefaction-carabidae], :see[figure-rarefaction]{of=scopes.carabidae.id} and :see[table-none].\n\n' +
    ':::figure{name=effort}\nOne of :value[effort.net].\n:::\n\n' +
    '::::each{in=scopes as=scope}\n:::figure{name=rarefaction of=scope.id}\nTwo.\n:::\n::::\n\n' +
    ':::table{name=rates}\nA\n\nB\n:::\n\n:::table{name=none}\nC\n:::'
  const {document, problems} = composed(template)
  expect(problems).toEqual([])
  expect(blocksOf(template)).toEqual([
    'See Figure 2, Figure 2 and Table 2.',
    'One of 240.',
    'Two.',
    'A B',
    'C'
  ])
  expect(
    document.tree.children.map((node) => ('number' in node ? [node.type, node.name, node.number] : []))
  ).toEqual([
    [],
    ['figureBlock', 'effort', 1],
    ['figureBlock', 'rarefaction-carabidae', 2],
    ['tableBlock', 'rates', 1],
    ['tableBlock', 'none', 2]
  ])
})

test('a site report has its site, and what that site leaves empty is no problem under given', () => {
  const scope = {site: smallResults.sites[0]}
  expect(wordsFrom(':text[site.name]:given[, :text[site.soil]]{path=site.soil}.', {scope})).toBe('Upper Oak.')
  expect(composed(':given[x]{path=site.soill}', {scope}).problems).toEqual([
    "chapter.md:1:1: unknown path 'site.soill'; did you mean 'soil'?"
  ])
})

test('findings and documents can be told one by one', () => {
  const finding = {
    code: 'late',
    severity: 'note',
    place: {file: 'visits.csv', line: 3},
    message: 'm',
    why: 'w',
    remedy: 'r'
  } as const
  expect(
    wordsFrom(
      ':joined[:text[f.place] :text[f.code]:given[ :text[f.cell]]{path=f.cell}]{each=findings as=f}',
      {findings: [finding]}
    )
  ).toBe('visits.csv:3 late')
  const documents = [{name: 'chapter', title: 'Chapter *1*', href: 'chapter.html'}]
  const {document} = composed(':document[documents.0]', {scope: {documents}})
  expect(document.tree.children[0]).toMatchObject({
    children: [{type: 'documentLink', href: 'chapter.html', children: [{value: 'Chapter *1*'}]}]
  })
})

test.each([
  ['x :value[effort.nett]', "chapter.md:1:3: unknown path 'effort.nett'; did you mean 'net'?"],
  ['x :value[efort.net]', "chapter.md:1:3: unknown path 'efort.net'; did you mean 'effort'?"],
  ['x :value[effort.constructor]', "chapter.md:1:3: unknown path 'effort.constructor'"],
  [
    ':text[habitats.oak.soil]',
    "chapter.md:1:1: nothing at 'habitats.oak.soil' in this study; guard it with given"
  ],
  [':value[stated.title]', "chapter.md:1:1: 'stated.title' is no number"],
  [':amount[stated.title]', "chapter.md:1:1: 'stated.title' is no measure"],
  [':interval[effort.net]', "chapter.md:1:1: 'effort.net' has no interval; guard it with given"],
  [':why[effort.net]', "chapter.md:1:1: 'effort.net' has a value; guard it with given"],
  [':caution[effort.net]', "chapter.md:1:1: 'effort.net' has no caution; guard it with given"],
  [':date[stated.title]', "chapter.md:1:1: 'stated.title' is no date"],
  [':text[habitats]', "chapter.md:1:1: 'habitats' is no text"],
  ['a\nb :valu[seed]', "chapter.md:2:3: unknown directive 'valu'; did you mean 'value'?"],
  [':value[seed]{wrds=yes}', "chapter.md:1:1: 'value' knows no 'wrds'; did you mean 'words'?"],
  ['::figure{name=effort}', "chapter.md:1:1: 'figure' is written :::figure and ::: on lines of their own"],
  [':::figure{name=efort}\nx\n:::', "chapter.md:1:1: unknown figure 'efort'; did you mean 'effort'?"],
  [':::table{nam=rates}\nx\n:::', "chapter.md:1:1: 'table' knows no 'nam'; did you mean 'name'?"],
  [
    'see :see[figure-efort]\n\n:::figure{name=effort}\nx\n:::',
    "chapter.md:1:5: 'figure-efort' does not stand in this document; did you mean 'figure-effort'?"
  ],
  [':see[effort]', "chapter.md:1:1: see needs figure-... or table-..., not 'effort'"],
  [':given[x]{}', 'chapter.md:1:1: given needs a condition'],
  [':given[x]{path=habitats above=many}', "chapter.md:1:1: above needs a number, not 'many'"],
  [':::each{in=effort as=x}\ny\n:::', "chapter.md:1:1: 'effort' is no list"],
  [':::figure{name=effort}\n- x\n:::', 'chapter.md:1:1: a caption holds text only']
])('%j is a problem with its place', (template, problem) => {
  expect(composed(template).problems).toContain(problem)
})

test('a figure can stand once in a document', () => {
  const twice = ':::figure{name=effort}\nx\n:::\n'.repeat(2)
  expect(composed(twice).problems).toEqual([
    "chapter.md:4:1: figure 'effort' stands in this document already; refer to it with :see[figure-effort]"
  ])
})

test('a problem within each is told once', () => {
  expect(composed(':::each{in=habitats as=h}\n:value[h.nett]\n:::').problems).toHaveLength(1)
})
