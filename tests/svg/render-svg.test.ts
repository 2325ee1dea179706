import {expect, test} from 'vitest'
import {renderSvg, type SvgRequest} from '../../src/svg/render-svg.ts'
import {exampleSpecs} from './example-specs.ts'

type Spec = SvgRequest['spec']

function draw(spec: Spec, more: Partial<SvgRequest> = {}): Promise<string> {
  return renderSvg({id: 'fig', title: 'A chart', description: 'What it shows.', spec, ...more})
}

/** A bar for each label. */
function labelled(labels: readonly string[]): Spec {
  return {
    data: {values: labels.map((label, index) => ({c0: label, c1: index + 1, c2: 'javascript:alert(1)'}))},
    mark: 'bar',
    encoding: {
      y: {field: 'c0', type: 'nominal', sort: null, title: labels[0]},
      x: {field: 'c1', type: 'quantitative', title: labels[0]},
      color: {field: 'c0', type: 'nominal', title: labels[0]}
    }
  }
}

/** The texts that a picture shows, as a reader sees them. */
function textsOf(svg: string): readonly string[] {
  return [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((match) =>
    match[1]!.replaceAll('&#x3C;', '<').replaceAll('&#x3E;', '>').replaceAll('&#x26;', '&')
  )
}

const calendar = (channel: object): Spec => ({
  data: {values: [{c0: '2026-05-01'}, {c0: '2026-06-01'}]},
  mark: 'point',
  encoding: {x: {field: 'c0', type: 'temporal', ...channel}}
})

const log = (scale: object): Spec => ({
  data: {values: [{c0: 0}, {c0: 10}]},
  mark: 'point',
  encoding: {x: {field: 'c0', type: 'quantitative', scale: {type: 'log', ...scale}}}
})

test.each(Object.entries(exampleSpecs))(
  '%s is one labelled image without roles inside',
  async (name, spec) => {
    const svg = await draw(spec, {id: name})
    expect(svg).toMatch(
      new RegExp(`^<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="title_${name}"`)
    )
    expect(svg).toContain(
      `<title id="title_${name}">A chart</title><desc id="desc_${name}">What it shows.</desc>`
    )
    expect(svg.match(/ role=/g)).toHaveLength(1)
    expect(svg.match(/ aria-/g)).toHaveLength(2)
    expect(svg).not.toMatch(/xlink|NaN|Infinity|undefined|null/)
  }
)

test.each(Object.entries(exampleSpecs))('%s has no number with more than two decimals', async (_, spec) => {
  expect(await draw(spec)).not.toMatch(/\d\.\d{3}/)
})

test('two charts on one page share no id, and every reference has its target', async () => {
  const clipped = {...exampleSpecs['log-axis']!, mark: {type: 'line', clip: true}}
  const page = (
    await Promise.all([
      draw(clipped, {id: 'a'}),
      draw(clipped, {id: 'b'}),
      draw(exampleSpecs['heat-map']!, {id: 'c'})
    ])
  ).join('')
  const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]!)
  expect(new Set(ids).size).toBe(ids.length)
  const references = [...page.matchAll(/url\(#([^)]+)\)/g)].map((match) => match[1]!)
  expect(references.length).toBeGreaterThanOrEqual(3)
  expect(ids).toEqual(expect.arrayContaining(references))
})

test.each([
  'Wood & heath <b>"old"</b>',
  'O\'Brien\\n\'s role="x" aria-label="y"',
  '</text></svg><script>alert(1)</script>',
  '<!-- x --> <![CDATA[ y ]]> <?z?>',
  'datum.c0 + now() {{x}} <%= y %>',
  '&lt;already&gt; &amp; escaped &#x3C;',
  'Bäche, Ærø, Łąka, Σ, Лес',
  'class="ink-fill" id="clip1" url(#clip1) 1.23456789'
])('the label %s is shown as it is written', async (label) => {
  const svg = await draw(labelled([label, 'Other']))
  // On the y axis, above it, below the x axis, and twice in the legend.
  expect(textsOf(svg).filter((text) => text === label)).toHaveLength(5)
  expect(svg).not.toMatch(/<(script|b|a|image|foreignObject)\b/)
})

test('long labels are not cut short', async () => {
  const label =
    'Pterostichus (Platysma) niger (Schaller, 1783), wet birch wood with purple moor grass'.repeat(3)
  const svg = await draw({...labelled([label, 'Other']), title: label})
  expect(textsOf(svg).filter((text) => text === label)).toHaveLength(6)
  expect(svg).not.toContain('…')
})

test('a long label widens the picture instead of running out of it', async () => {
  const width = (svg: string) => Number(/ width="(\d+)"/.exec(svg)?.[1])
  const short = width(await draw(labelled(['Heath'])))
  const long = width(await draw(labelled(['Heath with a name that goes on and on'])))
  expect(long).toBeGreaterThan(short + 100)
})

test('a link in the data leads nowhere: the mark stays and the link is left out', async () => {
  const spec = labelled(['Heath'])
  const svg = await draw({...spec, encoding: {...(spec.encoding as object), href: {field: 'c2'}}})
  expect(svg).not.toMatch(/javascript|href|<a\b/)
  expect(svg).toMatch(/<path d="M0,[^"]+" fill="#1866cc"/)
})

test.each(['file:///etc/hostname', 'data.csv', 'http://localhost:9/data.json', 'data:text/csv,a%0A1'])(
  'data from %s are refused',
  async (url) => {
    const spec = {data: {url}, mark: 'point', encoding: {x: {field: 'c0', type: 'quantitative'}}}
    await expect(draw(spec)).rejects.toThrow(
      `Figure fig: charts read no files and no addresses, but this one asks for ${url}`
    )
  }
)

test('an image from a file is not put into the picture', async () => {
  const spec = {
    data: {values: [{c0: 1, c1: 'file:///etc/hostname'}]},
    mark: {type: 'image', width: 10, height: 10},
    encoding: {x: {field: 'c0', type: 'quantitative'}, url: {field: 'c1'}}
  }
  expect(await draw(spec)).not.toMatch(/<image|hostname/)
})

test('local time is refused, because the picture would depend on the time zone', async () => {
  await expect(draw(calendar({}))).rejects.toThrow("scale 'x' is in local time")
  await expect(draw(calendar({scale: {type: 'utc'}, timeUnit: 'yearmonth'}))).rejects.toThrow(
    "time unit of 'c0' is in local time"
  )
  expect(await draw(calendar({scale: {type: 'utc'}}))).toContain('May')
})

test('local time is found inside small multiples too', async () => {
  const spec = calendar({})
  const facet = {
    data: spec.data,
    facet: {row: {field: 'c0', type: 'nominal'}},
    spec: {mark: 'point', encoding: spec.encoding},
    resolve: {scale: {x: 'independent'}}
  }
  await expect(draw(facet)).rejects.toThrow('is in local time')
})

test('what the library finds doubtful is a fault, unless somebody listens', async () => {
  await expect(draw(log({}))).rejects.toThrow('Figure fig: Log scale domain includes zero')
  const warnings: string[] = []
  await draw(log({}), {onWarning: (warning) => warnings.push(warning)})
  expect(warnings).toEqual([expect.stringContaining('Log scale domain includes zero')])
})

test('a specification that is not one is refused with the name of the figure', async () => {
  await expect(draw({}, {id: 'effort'})).rejects.toThrow(/^Figure effort: Invalid specification/)
  await expect(draw({...labelled(['x']), transform: [{calculate: 'nothing(1)', as: 'c3'}]})).rejects.toThrow(
    'Unrecognized function: nothing'
  )
})

test.each(['', '1a', 'a b', 'a"b', 'ä', '-a'])('the id "%s" is refused', async (id) => {
  await expect(draw(labelled(['x']), {id})).rejects.toThrow('the id must be a letter')
})

test('marks of no habitat are grey, not in a habitat colour', async () => {
  const {encoding, ...rest} = labelled(['x'])
  const {color: _, ...positions} = encoding as Readonly<Record<string, unknown>>
  const svg = await draw({...rest, encoding: positions})
  expect(svg).toContain('fill="#5c5c57" class="muted-fill"')
  expect(svg).not.toContain('#1866cc')
})

test('text is 11 or 12 pixels in fonts that share the measured widths', async () => {
  for (const spec of Object.values(exampleSpecs)) {
    const svg = await draw(spec)
    expect(svg).toContain('font-family="Arial, Helvetica, Liberation Sans, sans-serif"')
    expect(svg.match(/font-family/g)).toHaveLength(1)
    for (const [, size] of svg.matchAll(/font-size="([^"]+)"/g)) expect(['11px', '12px']).toContain(size)
  }
})
