import {inkTones} from '../model/ink.ts'
import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {joinWords} from './join-words.ts'
import {leftOutWords} from './left-out-words.ts'
import {amountWords, cautiousWords, numberWords} from './measure-words.ts'
import {withNotes} from './notes.ts'
import {curveLayers} from './rarefaction-layers.ts'
import {
  type DiversityOrder,
  endOf,
  extentOf,
  type RarefactionLine,
  type RarefactionPlot,
  rarefactionLines
} from './rarefaction-lines.ts'
import {wordLayers} from './rarefaction-words.ts'
import {sentenceStart} from './sentence-start.ts'
import {lineMark, textLines} from './text-lines.ts'
import {wrapLabel} from './wrap-label.ts'

/** Rarefaction and extrapolation by size: species of orders 0, 1 and 2 against the number of individuals. */
export const rarefaction: Chart = {
  name: 'rarefaction',
  summary: 'All, common and dominant species against the number of individuals; one picture for each scope.',
  figures: ({scopes}) => scopes.map(figure)
}

const panels: readonly {readonly order: DiversityOrder; readonly name: string; readonly unit: string}[] = [
  {order: 0, name: 'All species', unit: 'species'},
  {order: 1, name: 'Common species', unit: 'effective species'},
  {order: 2, name: 'Dominant species', unit: 'effective species'}
]

/** More lines than this in one plot cross and hide each other; then each habitat has plots of its own. */
const mostLinesInOnePlot = 5

function figure(scope: ScopeResult): Figure {
  const base = {
    name: `rarefaction-${scope.id}`,
    title: `Species against the number of individuals: ${scope.label}`,
    alternative: alternative(scope),
    data: {
      columns: ['habitat_id', 'habitat', 'order', 'individuals', 'value', 'part'],
      rows: scope.habitats.flatMap(({id, label, curves}) =>
        curves.flatMap(({order, points}) =>
          points.map(({size, value, beyond}) => [
            id,
            label,
            order,
            size,
            value,
            beyond ? 'beyond the catch' : 'within the catch'
          ])
        )
      )
    }
  }
  if (scope.habitats.length === 0) return {...base, notDrawn: 'no habitat is on record'}
  const lines = panels.flatMap(({order}) => rarefactionLines(scope.habitats, order))
  if (lines.length === 0) return {...base, notDrawn: 'no habitat has enough catch in this scope for a curve'}
  const withLine = scope.habitats.filter(hasCurve)
  const few = withLine.length <= mostLinesInOnePlot
  const picture = few ? together(scope.habitats) : apart(withLine)
  return {...base, spec: withNotes(picture, notes(scope.habitats), few ? 0 : rowHeadingLeft)}
}

const hasCurve = ({curves}: AssemblageResult) => curves.some(({points}) => points.some(({beyond}) => !beyond))

/** All habitats in each of three plots, one above the other, so that they share one axis of individuals. */
function together(habitats: readonly AssemblageResult[]): Record<string, unknown> {
  const roomRight = 146
  const {largestSize} = extentOf(panels.flatMap(({order}) => rarefactionLines(habitats, order)))
  return {
    vconcat: panels.map(({order, name, unit}, index) => {
      const lines = rarefactionLines(habitats, order)
      const plot: RarefactionPlot = {
        width: 455,
        height: order === 0 ? 190 : 130,
        ...extentOf(lines),
        largestSize
      }
      return {
        width: plot.width,
        height: plot.height,
        title: {text: name, offset: 4},
        layer: [
          ...curveLayers(lines, plot, {
            x: index === panels.length - 1 ? 'individuals' : null,
            y: unit,
            sizes: true
          }),
          ...wordLayers(lines, plot, {habitats: true, parts: index === 0, roomRight})
        ]
      }
    }),
    spacing: 16
  }
}

/** A row of three plots for each habitat; all plots of an order have the same axes. */
function apart(habitats: readonly AssemblageResult[]): Record<string, unknown> {
  const all = panels.map(({order}) => rarefactionLines(habitats, order))
  const {largestSize} = extentOf(all.flat())
  return {
    concat: habitats.flatMap((habitat, row) =>
      panels.map(({order, name, unit}, column) => {
        const plot: RarefactionPlot = {
          width: 136,
          height: habitats.length > 8 ? 62 : 88,
          ...extentOf(all[column] ?? []),
          largestSize
        }
        const lines = rarefactionLines([habitat], order)
        const last = row === habitats.length - 1
        return {
          width: plot.width,
          height: plot.height,
          layer: [
            ...curveLayers(lines, plot, {x: last ? 'individuals' : null, y: null, sizes: last}),
            ...wordLayers(lines, plot, {habitats: false, parts: row === 0 && column === 0, roomRight: 0}),
            ...(column === 0 ? rowHeading(habitat, plot.height) : []),
            ...(row === 0 ? columnHeading(name, unit) : [])
          ]
        }
      })
    ),
    columns: panels.length,
    spacing: {row: 10, column: 12}
  }
}

/** Where the names of habitats begin, in pixels from the first plot of their row. */
const rowHeadingLeft = -150

/** The habitat's name and symbol to the left of its row, clear of the labels of the vertical axis. */
function rowHeading({label, style}: AssemblageResult, height: number): Record<string, unknown>[] {
  return [
    {
      data: {values: [habitatFields(style)]},
      mark: {type: 'point', filled: true, size: 64, x: rowHeadingLeft, y: height / 2},
      encoding: {color: habitatColour, shape: habitatShape}
    },
    {
      data: {values: textLines(wrapLabel(label, 17, 4), 'middle')},
      mark: {...lineMark, align: 'left', baseline: 'middle', x: rowHeadingLeft + 12, y: height / 2},
      encoding: {text: {field: 'text', type: 'nominal'}}
    }
  ]
}

function columnHeading(name: string, unit: string): Record<string, unknown>[] {
  const line = (text: string, y: number, look: Record<string, unknown>) => ({
    data: {values: [{text}]},
    mark: {type: 'text', align: 'left', baseline: 'middle', x: 0, y, ...look},
    encoding: {text: {field: 'text', type: 'nominal'}}
  })
  return [line(name, -28, {fontWeight: 'bold', fontSize: 12}), line(unit, -13, {color: inkTones.muted.light})]
}

/** A line below the picture that names the habitats without a curve. */
function notes(habitats: readonly AssemblageResult[]): readonly string[] {
  const names = habitats.filter((habitat) => !hasCurve(habitat)).map(({label}) => label)
  return names.length === 0 ? [] : [`No line, for want of catch: ${joinWords(names)}.`]
}

function alternative(scope: ScopeResult): string {
  const each = scope.habitats.map((habitat) => {
    const {label, individuals, species, hill} = habitat
    if (!hasCurve(habitat))
      return `${sentenceStart(label)}: no line, ${amountWords(individuals, 'individual', 'individuals')} caught.`
    const effective = [hill.q1, hill.q2].map(({observed}) => observed)
    const [common, dominant] = effective.map(cautiousWords)
    const [line] = rarefactionLines([habitat], 0)
    return (
      `${sentenceStart(label)}: ${amountWords(individuals, 'individual', 'individuals')}, ${cautiousWords(species)} species; ` +
      `effective numbers of common species ${common} and of dominant species ${dominant}${further(line)}.`
    )
  })
  return [
    `${sentenceStart(scope.label)}: lines of the number of species against the number of individuals, in three panels: all species,`,
    'common species and dominant species. Each line is thick within the catch and thin beyond it.',
    ...each,
    ...leftOutWords(scope)
  ].join(' ')
}

function further(line: RarefactionLine | undefined): string {
  if (line === undefined || line.beyond.length === 0) return ''
  const {size, value} = endOf(line)
  return `; drawn on to ${numberWords(size, 'count')} individuals, where ${numberWords(value, 'estimate')} species are expected`
}
