import {describe, expect, test} from 'vitest'
import {charts} from '../../src/charts/index.ts'
import {type Results, resultsSchema} from '../../src/model/results.ts'
import {renderSvg} from '../../src/svg/render-svg.ts'
import {bareHabitat, extremeHabitats, manyHabitats, oddHabitats, resultsOf, threeHabitats} from './fixture.ts'

const variants: readonly (readonly [name: string, results: Results])[] = [
  ['one habitat', resultsOf(threeHabitats.slice(0, 1))],
  ['two habitats', resultsOf(threeHabitats.slice(0, 2))],
  ['three habitats', resultsOf(threeHabitats)],
  ['a habitat without catch', resultsOf([...threeHabitats, bareHabitat])],
  ['only a habitat without catch', resultsOf([bareHabitat])],
  ['twelve habitats', resultsOf(manyHabitats(12))],
  ['extreme numbers', resultsOf(extremeHabitats)],
  ['odd labels', resultsOf(oddHabitats)],
  ['nothing at all', resultsOf([])]
]

const figuresOf = (results: Results) => charts.flatMap((chart) => chart.figures(results))

describe.each(variants)('with %s', (_, results) => {
  test('the results are such as results.json may hold', () => {
    expect(resultsSchema.parse(results)).toEqual(results)
  })

  test('every picture is drawn without a warning, or says why it is not', async () => {
    for (const {name, spec, notDrawn, title, alternative} of figuresOf(results)) {
      if (spec === undefined) {
        expect(notDrawn).toMatch(/^[a-z].*[^.]$/)
        continue
      }
      const warnings: string[] = []
      const onWarning = (warning: string) => warnings.push(warning)
      const svg = await renderSvg({id: name, spec, title, description: alternative, onWarning})
      expect(warnings).toEqual([])
      expect(svg).not.toMatch(/NaN|undefined|\[object/)
      expect(notDrawn).toBeUndefined()
    }
  })

  test('pictures are so wide that a page of 640 pixels need not shrink their lettering below 9.6 pixels', async () => {
    for (const {name, spec, title, alternative} of figuresOf(results)) {
      if (spec === undefined) continue
      const svg = await renderSvg({id: name, spec, title, description: alternative})
      const [, width] = /viewBox="0 0 ([\d.]+)/.exec(svg) ?? []
      // One column of a printed site report is 82 mm wide, about 310 pixels.
      const [least, most] = name.startsWith('trap-layout') ? [280, 320] : [500, (640 * 11) / 9.6]
      expect(Number(width)).toBeGreaterThan(least)
      expect(Number(width)).toBeLessThan(most)
    }
  })

  test('each row of the data has a cell for each column, and none is not a number', () => {
    for (const {data} of figuresOf(results)) {
      for (const row of data.rows) {
        expect(row).toHaveLength(data.columns.length)
        for (const cell of row) expect(cell).not.toBeNaN()
      }
    }
  })

  test('descriptions are whole sentences without holes', () => {
    for (const {alternative, title} of figuresOf(results)) {
      expect(alternative).toMatch(/^[A-Z][\s\S]*\.$/)
      expect(alternative).not.toMatch(/NaN|undefined|null| {2}|\(\)|\b1 (individuals|sites)\b/)
      expect(title).not.toMatch(/\.$/)
    }
  })

  test('the same results give the same pictures and stay as they are', () => {
    const before = structuredClone(results)
    expect(figuresOf(results)).toEqual(figuresOf(results))
    expect(results).toEqual(before)
  })
})

test('the charts and their pictures have different names that can be file names', () => {
  const results = resultsOf(threeHabitats)
  const names = figuresOf(results).map(({name}) => name)
  const layouts = results.sites.map(({id}) => `trap-layout-${id}`)
  expect(names).toEqual([
    'site-map',
    'effort',
    'activity-density',
    'rank-abundance-carabidae',
    'composition-carabidae',
    'rarefaction-carabidae',
    'coverage-curves-carabidae',
    'incidence-curves-carabidae',
    'hill-profile-carabidae',
    'ordination-carabidae',
    'season',
    'species-season-carabidae',
    ...layouts
  ])
  for (const chart of charts)
    expect(names.filter((name) => name.startsWith(chart.name)).length, chart.name).toBeGreaterThan(0)
})

test('what the study calls its habitats never reaches a field name or an expression', () => {
  const odd = namesAndExpressions(figuresOf(resultsOf(oddHabitats)).map(({spec}) => spec))
  const plain = namesAndExpressions(figuresOf(resultsOf(threeHabitats)).map(({spec}) => spec))
  expect([...odd].sort()).toEqual([...plain].sort())
  for (const text of odd) expect(text).toMatch(/^[\w\s.'(),+]+$/)
})

/** The values under `field`, `expr` and `labelExpr`, except inside data. */
function namesAndExpressions(node: unknown): Set<string> {
  if (typeof node !== 'object' || node === null) return new Set()
  return new Set(
    Object.entries(node).flatMap(([key, value]) => {
      if (key === 'values') return []
      if (typeof value === 'string') return ['field', 'expr', 'labelExpr'].includes(key) ? [value] : []
      return [...namesAndExpressions(value)]
    })
  )
}
