import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import {bandNotes} from './band-notes.ts'
import type {Chart, Figure} from './chart.ts'
import {allPoints, type CurveLine, endOf, extentOf} from './curve-lines.ts'
import {curvesApart, curvesTogether, mostLinesInOnePlot, orderPanels, rowHeadingLeft} from './curve-panels.ts'
import {leftOutWords} from './left-out-words.ts'
import {amountWords, cautiousWords, numberWords} from './measure-words.ts'
import {withNotes} from './notes.ts'
import {rarefactionLines} from './rarefaction-lines.ts'
import {sentenceStart} from './sentence-start.ts'
import {withoutLineNotes} from './without-line-notes.ts'

/** Rarefaction and extrapolation by size: species of orders 0, 1 and 2 against the number of individuals. */
export const rarefaction: Chart = {
  name: 'rarefaction',
  summary: 'All, common and dominant species against the number of individuals; one picture for each scope.',
  figures: ({scopes, confidence}) => scopes.map((scope) => figure(scope, confidence))
}

function figure(scope: ScopeResult, confidence: number): Figure {
  const base = {
    name: `rarefaction-${scope.id}`,
    title: `Species against the number of individuals: ${scope.label}`,
    alternative: alternative(scope),
    data: {
      columns: ['habitat_id', 'habitat', 'order', 'individuals', 'value', 'part', 'low', 'high'],
      rows: scope.habitats.flatMap(({id, label, curves}) =>
        curves.flatMap(({order, points}) =>
          points.map(({size, value, beyond, low, high}) => [
            id,
            label,
            order,
            size,
            value,
            beyond ? 'beyond the catch' : 'within the catch',
            low ?? null,
            high ?? null
          ])
        )
      )
    }
  }
  if (scope.habitats.length === 0) return {...base, notDrawn: 'no habitat is on record'}
  const curves = orderPanels.map(({order}) => rarefactionLines(scope.habitats, order))
  if (curves.flat().length === 0)
    return {...base, notDrawn: 'no habitat has enough catch in this scope for a curve'}
  const axis = {title: 'individuals', from: 0, to: extentOf(allPoints(curves.flat())).to, format: ',d'}
  const withLine = scope.habitats.filter(hasCurve)
  const few = withLine.length <= mostLinesInOnePlot
  const picture = few ? curvesTogether(curves, axis) : curvesApart(withLine, curves, axis)
  const notes = [
    ...bandNotes(curves, confidence),
    ...withoutLineNotes(scope.habitats.filter((habitat) => !hasCurve(habitat)))
  ]
  return {...base, spec: withNotes(picture, notes, few ? 0 : rowHeadingLeft)}
}

const hasCurve = ({curves}: AssemblageResult) => curves.some(({points}) => points.some(({beyond}) => !beyond))

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

function further(line: CurveLine | undefined): string {
  if (line === undefined || line.thin.length === 0) return ''
  const {at, value, low, high} = endOf(line)
  const band =
    low === undefined || high === undefined
      ? ''
      : ` (band ${numberWords(low, 'estimate')} to ${numberWords(high, 'estimate')})`
  return `; drawn on to ${numberWords(at, 'count')} individuals, where ${numberWords(value, 'estimate')} species are expected${band}`
}
