import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {lineLayers, type PlotAxes, positions, symbolLayer} from './curve-layers.ts'
import {
  allPoints,
  bandOf,
  type CurveLine,
  type CurvePlot,
  type CurvePoint,
  extentOf,
  partedLine
} from './curve-lines.ts'
import {mostLinesInOnePlot} from './curve-panels.ts'
import {wordLayers} from './curve-words.ts'
import {habitatColour, habitatFields} from './habitat-symbols.ts'
import {confidenceWords, measureClause, measureWords} from './measure-words.ts'
import {withNotes} from './notes.ts'
import {panelFigure, panelGrid, panelHeading, panelWords} from './panel-grid.ts'
import {sentenceStart} from './sentence-start.ts'
import {withoutLineNotes} from './without-line-notes.ts'

/** Effective species against the order of diversity: whether habitats keep their places when common species weigh more. */
export const hillProfile: Chart = {
  name: 'hill-profile',
  summary: 'Effective number of species against the order of diversity, 0 to 3; one picture for each scope.',
  figures: ({scopes, confidence}) => scopes.map((scope) => figure(scope, confidence))
}

function figure(scope: ScopeResult, confidence: number): Figure {
  const {habitats} = scope
  const base = {
    name: `hill-profile-${scope.id}`,
    title: `Diversity against its order: ${scope.label}`,
    alternative: alternative(scope),
    data: {
      columns: ['habitat_id', 'habitat', 'kind', 'order', 'effective_species', 'low', 'high'],
      rows: habitats.flatMap(({id, label, profile}) => [
        ...profile.asymptotic.map(({order, value, low, high}) => [
          id,
          label,
          'estimated',
          order,
          value,
          low ?? null,
          high ?? null
        ]),
        ...profile.observed.map((value, index) => [
          id,
          label,
          'as caught',
          profile.orders[index] ?? null,
          value,
          null,
          null
        ])
      ])
    }
  }
  if (habitats.length === 0) return {...base, notDrawn: 'no habitat is on record'}
  const lines = habitats.flatMap((habitat) => lineOf(habitat) ?? [])
  if (lines.length === 0) return {...base, notDrawn: 'nothing in this scope was caught'}
  const withCatch = habitats.filter((habitat) => lineOf(habitat) !== undefined)
  const estimates = withCatch.flatMap((habitat, index) => estimatesOf(habitat, index, withCatch.length))
  const {largestValue, cut} = extentOf([...allPoints(lines), ...estimates])
  const picture =
    lines.length <= mostLinesInOnePlot
      ? together(lines, estimates, largestValue)
      : apart(habitats, lines, estimates, largestValue)
  return {...base, spec: withNotes(picture, notes(habitats, estimates, cut, confidence), 0)}
}

/** The line is the catch itself. */
function lineOf({label, style, profile}: AssemblageResult): CurveLine | undefined {
  const strong = profile.observed.flatMap((value, index) => {
    const at = profile.orders[index]
    return at === undefined ? [] : [{at, value}]
  })
  return partedLine({label, style}, strong, [])
}

interface Estimate extends CurvePoint {
  readonly style: number
}

/** Estimates of orders 0, 1 and 2, a little apart between habitats, so that none hides another. */
function estimatesOf({style, profile}: AssemblageResult, index: number, of: number): readonly Estimate[] {
  const aside = of > mostLinesInOnePlot ? 0 : (index - (of - 1) / 2) * 0.05
  return profile.asymptotic.map(({order, value, low, high}) => ({
    at: order + aside,
    value,
    style,
    ...bandOf(low, high)
  }))
}

function notes(
  habitats: readonly AssemblageResult[],
  estimates: readonly Estimate[],
  cut: boolean,
  confidence: number
): readonly string[] {
  const without = habitats.filter(
    ({profile}) => profile.observed.length > 0 && profile.asymptotic.length === 0
  )
  return [
    ...(estimates.length === 0
      ? []
      : [
          `Lines: as caught. Symbols: estimates for the whole assemblage, with ${confidenceWords(confidence)} intervals by bootstrap.${cut ? ' Some intervals go on above the plot.' : ''}`
        ]),
    ...without.map(({label}) => `${sentenceStart(label)}: no estimate, the catch is too small.`),
    ...withoutLineNotes(habitats.filter((habitat) => lineOf(habitat) === undefined))
  ]
}

/** From a little below 0, so that estimates set aside stay inside. */
const orders = {from: -0.15, to: 3}
const title = 'order of diversity: at 0 all species weigh the same, at 3 the commonest weigh most'

function together(
  lines: readonly CurveLine[],
  estimates: readonly Estimate[],
  largestValue: number
): Record<string, unknown> {
  const plot: CurvePlot = {width: 455, height: 230, ...orders, largestValue}
  return {
    width: plot.width,
    height: plot.height,
    layer: [
      ...profileLayers(lines, estimates, plot, {
        x: title,
        y: 'effective species',
        numbers: true,
        format: '~r'
      }),
      ...wordLayers(lines, plot, {habitats: true, roomRight: 146})
    ]
  }
}

function apart(
  habitats: readonly AssemblageResult[],
  lines: readonly CurveLine[],
  estimates: readonly Estimate[],
  largestValue: number
): Record<string, unknown> {
  const grid = panelGrid(habitats.length)
  const plot: CurvePlot = {width: grid.width, height: grid.height - 30, ...orders, largestValue}
  const panels = habitats.map((habitat, index) => {
    const own = <Item extends {readonly style: number}>(items: readonly Item[]) =>
      items.filter(({style}) => style === habitat.style)
    const line = own(lines)
    const x = grid.isLowest(index) ? 'order of diversity' : null
    return {
      width: plot.width,
      height: plot.height,
      layer: [
        ...profileLayers(line, own(estimates), plot, {x, y: null, numbers: true, format: '~r'}),
        ...panelHeading(habitat, plot.width),
        ...(line.length === 0 ? [panelWords('none caught', {...grid, height: plot.height})] : [])
      ]
    }
  })
  return panelFigure('effective species', panels, grid)
}

function profileLayers(
  lines: readonly CurveLine[],
  estimates: readonly Estimate[],
  plot: CurvePlot,
  axes: PlotAxes
): readonly Record<string, unknown>[] {
  const {x, y} = positions(plot, axes)
  const values = estimates.map(({style, ...estimate}) => ({...estimate, ...habitatFields(style)}))
  return [
    ...lineLayers(lines, plot, axes),
    {
      data: {values: values.filter(({low}) => low !== undefined)},
      mark: {type: 'rule', strokeWidth: 1.25, clip: true},
      encoding: {x, y: {...y, field: 'low'}, y2: {field: 'high'}, color: habitatColour}
    },
    symbolLayer(values, plot, axes)
  ]
}

function alternative({label, habitats}: ScopeResult): string {
  const each = habitats.map((habitat) => {
    if (lineOf(habitat) === undefined) return `${sentenceStart(habitat.label)}: no line.`
    const {q0, q1, q2} = habitat.hill
    const caught = [q0, q1, q2].map(({observed}) => measureWords(observed)).join(', ')
    const estimated = [q0, q1, q2].map(({asymptotic}) => measureClause(asymptotic)).join(', ')
    return `${sentenceStart(habitat.label)}: at orders 0, 1 and 2, ${caught} as caught; estimated ${estimated}.`
  })
  return [
    `${sentenceStart(label)}: falling lines of the effective number of species against the order of diversity, from 0 to 3;`,
    'lines are the catch itself, symbols at orders 0, 1 and 2 are estimates.',
    ...each
  ].join(' ')
}
