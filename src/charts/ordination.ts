import {isDefined} from '../model/quantity.ts'
import type {Results, ScopeResult} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {measureWords, numberWords} from './measure-words.ts'
import {withNotes} from './notes.ts'
import {ordinationPlot} from './ordination-plot.ts'
import {sentenceStart} from './sentence-start.ts'

/** Sites as points, the nearer the more alike their catches: principal coordinates. */
export const ordination: Chart = {
  name: 'ordination',
  summary: 'Sites as points, the nearer the more alike their catches; one picture for each scope.',
  figures: (results) => results.scopes.map((scope) => figure(scope, results))
}

type Scores = ScopeResult['composition']['principalCoordinates']['scores']

function figure(scope: ScopeResult, {habitats}: Results): Figure {
  const {principalCoordinates, nonMetricScaling} = scope.composition
  const {scores, notDefined} = principalCoordinates
  const scaled = new Map(nonMetricScaling.scores.map(({id, at}) => [id, at]))
  const labels = new Map(habitats.map(({id, label}) => [id, label]))
  const shown = habitats.filter(({id}) => scores.some(({habitat}) => habitat === id))
  const base = {
    name: `ordination-${scope.id}`,
    title: `Likeness of the catches of the sampling units: ${scope.label}`,
    alternative: alternative(scope, shown),
    data: {
      columns: ['unit_id', 'unit', 'habitat_id', 'habitat', 'axis_1', 'axis_2', 'scaling_1', 'scaling_2'],
      rows: scores.map(({id, label, habitat, at}) => [
        id,
        label,
        habitat,
        labels.get(habitat) ?? null,
        at[0] ?? null,
        at[1] ?? null,
        scaled.get(id)?.[0] ?? null,
        scaled.get(id)?.[1] ?? null
      ])
    }
  }
  if (notDefined !== undefined) return {...base, notDrawn: notDefined}
  if (scores.length < 3) return {...base, notDrawn: 'it takes at least three sites with catch in this scope'}
  const {picture, notes} = ordinationPlot(scores, shown, axisTitles(scope))
  return {...base, spec: withNotes(picture, notes, 0)}
}

function axisTitles({composition}: Pick<ScopeResult, 'composition'>): readonly [x: string, y: string] {
  const title = (axis: number) => {
    const share = composition.principalCoordinates.shares[axis]
    return share === undefined || !isDefined(share)
      ? `axis ${axis + 1}`
      : `axis ${axis + 1}: ${measureWords(share)} of the variation`
  }
  return [title(0), title(1)]
}

function alternative({label, composition}: ScopeResult, habitats: Results['habitats']): string {
  const {scores} = composition.principalCoordinates
  if (scores.length === 0) return `${sentenceStart(label)}: no site can be placed by its catch.`
  const [x, y] = axisTitles({composition})
  const each = habitats.map(({id, label: name}) => {
    const own = scores.filter(({habitat}) => habitat === id)
    return `${sentenceStart(name)}: ${own.map(({label: unit}) => unit).join(', ')}; ${range(own, 0)} on axis 1, ${range(own, 1)} on axis 2.`
  })
  return [
    `${sentenceStart(label)}: points for ${scores.length} sampling units, the nearer to each other the more alike their catches;`,
    `${x}, ${y}.`,
    ...each
  ].join(' ')
}

function range(scores: Scores, axis: number): string {
  const values = scores.map(({at}) => at[axis] ?? 0)
  const [low, high] = [Math.min(...values), Math.max(...values)].map((value) => numberWords(value, 'ratio'))
  return low === high ? `${low}` : `${low} to ${high}`
}
