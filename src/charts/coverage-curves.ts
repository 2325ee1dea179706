import {listWords} from '../model/list-words.ts'
import {isDefined} from '../model/quantity.ts'
import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import {bandNotes} from './band-notes.ts'
import type {Chart, Figure} from './chart.ts'
import {type CurveLine, type DiversityOrder, endOf, lineFrom, partedLine, pointsOf} from './curve-lines.ts'
import {curvesApart, curvesTogether, mostLinesInOnePlot, orderPanels, rowHeadingLeft} from './curve-panels.ts'
import {measureClause, measureWords, numberWords} from './measure-words.ts'
import {withNotes} from './notes.ts'
import {sentenceStart} from './sentence-start.ts'
import {withoutLineNotes} from './without-line-notes.ts'

/** The same curves as by size, but against sample coverage: habitats side by side at equal completeness. */
export const coverageCurves: Chart = {
  name: 'coverage-curves',
  summary: 'All, common and dominant species against sample coverage; one picture for each scope.',
  figures: ({scopes, confidence}) => scopes.map((scope) => figure(scope, confidence))
}

function figure(scope: ScopeResult, confidence: number): Figure {
  const {habitats, equalCoverage} = scope
  const base = {
    name: `coverage-curves-${scope.id}`,
    title: `Species against sample coverage: ${scope.label}`,
    alternative: alternative(scope),
    data: {
      columns: ['habitat_id', 'habitat', 'order', 'coverage', 'value', 'part', 'low', 'high'],
      rows: habitats.flatMap(({id, label, coverageCurves: curves}) =>
        curves.flatMap((curve) =>
          pointsOf(curve).map(({at, value, low, high}, index) => [
            id,
            label,
            curve.order,
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
  const whole = orderPanels.map(({order}) => linesOf(habitats, order))
  if (whole.flat().length === 0)
    return {...base, notDrawn: 'no habitat has enough catch in this scope for a curve'}
  const shared = isDefined(equalCoverage.coverage) ? [equalCoverage.coverage.value] : []
  const from = axisStart(whole.flat().map(({mark}) => mark.at))
  const curves = whole.map((lines) => lines.map((line) => lineFrom(line, from)))
  const axis = {title: 'sample coverage', from, to: 1, format: '.3~f', rules: shared}
  const withLine = habitats.filter(hasCurve)
  const few = withLine.length <= mostLinesInOnePlot
  const picture = few ? curvesTogether(curves, axis) : curvesApart(withLine, curves, axis)
  const notes = [
    ...shared.map(
      (coverage) =>
        `Upright line: the coverage of ${numberWords(coverage, 'coverage')} at which habitats are compared.`
    ),
    ...bandNotes(curves, confidence),
    ...withoutLineNotes(habitats.filter((habitat) => !hasCurve(habitat)))
  ]
  return {...base, spec: withNotes(picture, notes, few ? 0 : rowHeadingLeft)}
}

function linesOf(habitats: readonly AssemblageResult[], order: DiversityOrder): readonly CurveLine[] {
  return habitats.flatMap((habitat) => {
    const curve = habitat.coverageCurves.find((found) => found.order === order)
    if (curve === undefined) return []
    const points = pointsOf(curve)
    return partedLine(habitat, points.slice(0, curve.within), points.slice(curve.within)) ?? []
  })
}

/**
 * Where the axis starts: with little of an assemblage missing, all that differs lies close to 1, and the way there from
 * 0 would fill the picture. The gap of the least complete catch takes a quarter of the axis.
 */
function axisStart(coverages: readonly number[]): number {
  const start = 1 - 4 * (1 - Math.min(...coverages))
  return start <= 0.1 ? 0 : Math.floor(start * 100) / 100
}

const hasCurve = ({coverageCurves: curves}: AssemblageResult) => curves.some(({within}) => within > 0)

function alternative({label, habitats, equalCoverage}: ScopeResult): string {
  const {coverage, habitats: compared} = equalCoverage
  const each = habitats.filter(hasCurve).map((habitat) => {
    const [line] = linesOf([habitat], 0)
    const ends = line === undefined ? '' : ` and the line ends at ${numberWords(endOf(line).at, 'coverage')}`
    return `${sentenceStart(habitat.label)}: coverage of the catch ${measureWords(habitat.coverage)}${ends}.`
  })
  const atShared = compared.map(
    (habitat) =>
      `${habitat.label} ${measureClause(habitat.q0)} species, ${measureWords(habitat.q1)} common and ${measureWords(habitat.q2)} dominant`
  )
  return [
    `${sentenceStart(label)}: lines of the number of species against sample coverage, in three panels: all species,`,
    'common species and dominant species. Each line is thick within the catch and thin beyond it.',
    ...each,
    ...(isDefined(coverage) && atShared.length > 0
      ? [`At the coverage of ${measureWords(coverage)}: ${listWords(atShared)}.`]
      : [])
  ].join(' ')
}
