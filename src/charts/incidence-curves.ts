import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import {bandNotes} from './band-notes.ts'
import type {Chart, Figure} from './chart.ts'
import {curveLayers} from './curve-layers.ts'
import {
  allPoints,
  type CurveLine,
  type CurvePlot,
  endOf,
  extentOf,
  partedLine,
  pointsOf
} from './curve-lines.ts'
import {curveParts, mostLinesInOnePlot} from './curve-panels.ts'
import {wordLayers} from './curve-words.ts'
import {amountWords, measureWords, numberWords} from './measure-words.ts'
import {withNotes} from './notes.ts'
import {panelFigure, panelGrid, panelHeading, panelWords} from './panel-grid.ts'
import {sentenceStart} from './sentence-start.ts'
import {withoutLineNotes} from './without-line-notes.ts'

/** Species against sampling units: the curve that clumped animals cannot lift. */
export const incidenceCurves: Chart = {
  name: 'incidence-curves',
  summary:
    'Species against the number of sampling units (a site, or a trap, in a round); one picture for each scope.',
  figures: ({scopes, confidence}) => scopes.map((scope) => figure(scope, confidence))
}

const unitWords = {
  'site-round': {one: 'site in a round', many: 'sites, each in a round'},
  'trap-round': {one: 'trap in a round', many: 'traps, each in a round'}
} as const

function figure(scope: ScopeResult, confidence: number): Figure {
  const {habitats} = scope
  const base = {
    name: `incidence-curves-${scope.id}`,
    title: `Species against the number of sampling units: ${scope.label}`,
    alternative: alternative(scope),
    data: {
      columns: ['habitat_id', 'habitat', 'sampling_units', 'species', 'part', 'low', 'high'],
      rows: habitats.flatMap(({id, label, incidence}) =>
        incidence.curves
          .filter(({order}) => order === 0)
          .flatMap((curve) =>
            pointsOf(curve).map(({at, value, low, high}, index) => [
              id,
              label,
              at,
              value,
              index < curve.within ? 'within the catch' : 'beyond the catch',
              low ?? null,
              high ?? null
            ])
          )
      )
    }
  }
  if (habitats.length === 0) return {...base, notDrawn: 'no habitat is on record'}
  const lines = habitats.flatMap((habitat) => lineOf(habitat) ?? [])
  if (lines.length === 0) return {...base, notDrawn: 'no habitat has enough catch in this scope for a curve'}
  const unit = habitats[0]?.incidence.unit ?? 'site-round'
  const title = `sampling units: ${unitWords[unit].many}`
  const picture = lines.length <= mostLinesInOnePlot ? together(lines, title) : apart(habitats, lines, title)
  const notes = [
    ...bandNotes([lines], confidence),
    ...withoutLineNotes(habitats.filter((habitat) => lineOf(habitat) === undefined))
  ]
  return {...base, spec: withNotes(picture, notes, 0)}
}

function lineOf(habitat: AssemblageResult): CurveLine | undefined {
  const curve = habitat.incidence.curves.find(({order}) => order === 0)
  if (curve === undefined) return undefined
  const points = pointsOf(curve)
  return partedLine(habitat, points.slice(0, curve.within), points.slice(curve.within))
}

function together(lines: readonly CurveLine[], title: string): Record<string, unknown> {
  const {to, largestValue} = extentOf(allPoints(lines))
  const plot: CurvePlot = {width: 455, height: 170, from: 0, to, largestValue}
  return {
    width: plot.width,
    height: plot.height,
    layer: [
      ...curveLayers(lines, plot, {x: title, y: 'species', numbers: true, format: ',d'}),
      ...wordLayers(lines, plot, {habitats: true, parts: curveParts, roomRight: 146})
    ]
  }
}

function apart(
  habitats: readonly AssemblageResult[],
  lines: readonly CurveLine[],
  title: string
): Record<string, unknown> {
  const grid = panelGrid(habitats.length)
  const {to, largestValue} = extentOf(allPoints(lines))
  const plot: CurvePlot = {width: grid.width, height: grid.height - 40, from: 0, to, largestValue}
  const panels = habitats.map((habitat, index) => {
    const own = lines.filter(({style}) => style === habitat.style)
    const x = grid.isLowest(index) ? 'sampling units' : null
    return {
      width: plot.width,
      height: plot.height,
      layer: [
        ...curveLayers(own, plot, {x, y: null, numbers: true, format: ',d'}),
        ...wordLayers(own, plot, {
          habitats: false,
          parts: index === 0 ? curveParts : undefined,
          roomRight: 0
        }),
        ...panelHeading(habitat, plot.width),
        ...(own.length === 0 ? [panelWords('none caught', {...grid, height: plot.height})] : [])
      ]
    }
  })
  return panelFigure(`species against ${title}`, panels, grid)
}

function alternative({label, habitats}: ScopeResult): string {
  const each = habitats.map((habitat) => {
    const {units, species, unit} = habitat.incidence
    const line = lineOf(habitat)
    if (line === undefined) return `${sentenceStart(habitat.label)}: no line.`
    const words = unitWords[unit]
    const end = endOf(line)
    const further =
      line.thin.length === 0
        ? ''
        : `; drawn on to ${numberWords(end.at, 'count')} of them, where ${numberWords(end.value, 'estimate')} species are expected`
    return `${sentenceStart(habitat.label)}: ${measureWords(species)} species in ${amountWords(units, words.one, words.many)}${further}.`
  })
  return [
    `${sentenceStart(label)}: lines of the number of species against the number of sampling units.`,
    'Each line is thick within the catch and thin beyond it.',
    ...each
  ].join(' ')
}
