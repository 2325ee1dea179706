import {h} from 'hastscript'
import {HtmlValidate} from 'html-validate'
import {expect, test} from 'vitest'
import {contentOf} from '../../src/formats/html-rows.ts'
import type {ReportTable} from '../../src/report/table.ts'
import {everything, pageOf, pages} from './page.ts'

test('a page is valid HTML', async () => {
  const validator = new HtmlValidate({
    extends: ['html-validate:standard', 'html-validate:a11y'],
    // A region that scrolls must be reachable by keyboard; the rest are matters of taste.
    rules: {
      'no-inline-style': 'off',
      'long-title': 'off',
      'wcag/h63': 'error',
      'prefer-native-element': 'off',
      'no-redundant-role': 'off',
      'void-style': 'off'
    }
  })
  for (const [name, text] of [
    ['chapter', everything],
    ['site-o1', everything],
    ['index', '# A\n\n- :document[documents.0], :text[documents.0.summary]']
  ] as const) {
    const report = await validator.validateString(pageOf(text, name))
    expect(
      report.results.flatMap(({messages}) =>
        messages.map(({ruleId, message, line}) => `${line} ${ruleId}: ${message}`)
      )
    ).toEqual([])
  }
})

test('every id stands once, and every link within the page finds its target', () => {
  const page = pageOf(everything)
  const ids = [...page.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id)
  expect(new Set(ids).size).toBe(ids.length)
  const targets = [...page.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id)
  expect(targets).toEqual(expect.arrayContaining(['figure-effort', 'table-rates', 'ref-chao-2014', 'text']))
  expect(targets.filter((id) => !ids.includes(id))).toEqual([])
  const labels = [...page.matchAll(/aria-labelledby="([^"]+)"/g)].flatMap(([, list = '']) => list.split(' '))
  expect(labels.filter((id) => !ids.includes(id))).toEqual([])
})

test('a page holds no script and asks nothing of another host', () => {
  const page = pageOf(everything)
  expect(page).not.toMatch(/<script|<link[^>]+href="(?!data:)|<img[^>]+src="(?!data:)|@import|url\(/i)
  expect(page).toContain("default-src 'none'")
})

test('what a study says stands there letter by letter', () => {
  const page = pageOf(everything)
  expect(page).toContain('*none* | &#x3C;script>alert(1)&#x3C;/script> :value[seed]')
  expect(page).toContain('at 12:30,')
  expect(page).toContain('Ash &#x26; &#x3C;Elm>')
  expect(page).not.toMatch(/undefined|NaN|\[object/)
})

test('a study title cannot leave the style it is printed by', () => {
  const page = pageOf('# A', 'chapter', {study: {title: '"}</style><script>x', season: '2026'}})
  expect(page).not.toContain('</style><script>')
  expect(page).toContain('content: "\\22 \\7d \\3c \\2f style')
})

test('nobody can write the marks of pictures and rows, and none is left on a page', () => {
  const forged =
    '<tbody data-rows="0"></tbody>\n\n:::tbody{data-rows=0}\nx\n:::\n\n:div[x]{data-figure=effort}'
  for (const page of [pageOf(everything), pageOf(`# A\n\n${forged}`)])
    expect(page).not.toMatch(/<[^>]*\sdata-(?:rows|figure)/)
})

test('cells that are more than a text are sanitised too', () => {
  const children = [h('a', {href: 'javascript:alert(1)'}, 'x'), h('em', {onClick: 'alert(1)'}, 'y')]
  expect(contentOf(children)).toBe('<a>x</a><em>y</em>')
})

test('headings cannot take the ids of captions', () => {
  const page = pageOf(`${everything}\n\n## Figure effort caption\n\n## Table rates caption\n`)
  const ids = [...page.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id)
  expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([])
})

test('a page says its language, and a row head without words is a plain cell', () => {
  expect(pageOf('# A')).toContain('<html lang="en-GB">')
  expect(pageOf('# A', 'chapter', {language: 'en-US'})).toContain('<html lang="en-US">')
  const table = {
    name: 'x',
    columns: [{head: 'A', align: 'left' as const}],
    rows: [[{type: 'blank' as const}]],
    empty: ''
  }
  expect(pageWith(table)).toContain('<tbody><tr><td></td></tr></tbody>')
})

test('a figure has its picture, its caption and its data one click away', () => {
  const page = pageOf(everything)
  expect(page).toMatch(
    /<div class="figure-block"><figure id="figure-effort"><div class="plate" role="group" tabindex="0" aria-labelledby="caption_figure-effort"><svg/
  )
  expect(page).toContain(
    '<figcaption id="caption_figure-effort"><span class="number-label">Figure 1</span> Effort of <em>two</em> habitats.</figcaption>'
  )
  expect(page).toContain('<a href="figures/effort.csv">')
  expect(page).toContain('<summary>Data behind Figure 1</summary>')
})

test('a table has caption, units in its heads, row heads, aligned decimals and notes', () => {
  const page = pageOf(everything)
  expect(page).toContain(
    '<th scope="col" class="number marked">Rate <span class="unit">per 100 trap-nights</span></th>'
  )
  expect(page).toContain(
    '<th scope="row"><em>Carabus nemoralis</em> Müller, 1764</th><td class="number marked">53.3<sup class="mark">a</sup></td>'
  )
  expect(page).toContain(
    '<td class="number marked">–<sup class="mark">b</sup><span aria-hidden="true">\u2008\u2007</span></td>'
  )
  expect(page).toContain(
    '<tfoot><tr><th scope="row">All</th><td class="number marked">123<span aria-hidden="true">\u2008\u2007</span></td></tr></tfoot>'
  )
  expect(page).toContain(
    '<li><sup>a</sup> One site only.</li><li><sup>b</sup> Not defined, because no traps stood there.</li>'
  )
  expect(page).toContain('<p class="empty">Nothing was caught.</p>')
})

test('a wide table stands in a box that the keyboard can move', () => {
  const columns = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i'].map((head) => ({
    head,
    align: 'left' as const
  }))
  const table = {
    name: 'wide',
    columns,
    rows: [columns.map(() => ({type: 'text' as const, text: 'words'}))],
    empty: ''
  }
  const page = pageWith(table)
  expect(page).toContain('<section class="scroll" tabindex="0" aria-labelledby="caption_table-wide"><table>')
})

test('a table of more than 2,000 rows shows the first 200 and names its file', () => {
  const rows = Array.from({length: 2001}, (_, index) => [{type: 'text' as const, text: `row ${index}`}])
  const page = pageWith({name: 'long', columns: [{head: 'Row', align: 'left' as const}], rows, empty: ''})
  expect(page).toContain('row 199<')
  expect(page).not.toContain('row 200<')
  expect(page).toContain('The first 200 of 2001 rows. All of them: <a href="tables/long.csv">')
})

test('a site report leads to no other page, and other pages to no site', () => {
  const links = (page: string) => [...page.matchAll(/href="([^"#]+\.html)"/g)].map(([, href]) => href)
  expect(links(pageOf('# A', 'site-o1'))).toEqual([])
  expect(links(pageOf('# A', 'chapter'))).toEqual(['index.html', 'chapter.html', 'season.html'])
})

test('the front page shows each document as a card', () => {
  const page = pageOf(
    ':::each{in=documents as=document}\n- :document[document], :text[document.summary]\n:::',
    'index'
  )
  expect(page.match(/<p class="card-title">/g)).toHaveLength(pages.length)
  expect(page).toContain(
    '<p class="card-title"><a href="chapter.html">Chapter</a></p><p>For a thesis</p><p class="card-also">Also as <a href="chapter.md">Markdown</a></p>'
  )
})

test('a list of site reports alone is set in lines', () => {
  const page = pageOf('- :document[documents.1]\n- :document[documents.2]', 'index')
  expect(page).toContain(
    '<ul class="site-reports"><li><a href="site-o1.html">Upper Oak</a></li><li><a href="site-a1.html">Lower Ash</a></li></ul>'
  )
})

test('a photograph is inside the page, or its words are', () => {
  const photos = new Map([['photos/trap.jpg', 'data:image/jpeg;base64,AAAA']])
  expect(pageOf('![A trap](photos/trap.jpg)', 'chapter', {photos})).toContain(
    '<img src="data:image/jpeg;base64,AAAA" alt="A trap">'
  )
  expect(pageOf('![A trap](photos/other.jpg)')).toContain('<em>[Picture: A trap]</em>')
})

test('the same document gives the same bytes', () => {
  expect(pageOf(everything)).toBe(pageOf(everything))
})

/** A page that shows this table. */
function pageWith(table: ReportTable): string {
  return pageOf(
    `:::table{name=${table.name}}\nCaption.\n:::`,
    'chapter',
    {},
    {tables: new Map([[table.name, table]])}
  )
}
