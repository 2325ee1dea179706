import {listWords} from '../model/list-words.ts'
import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {italicLetterWidth, italicNames, shownName} from './italic-names.ts'
import {leftOutWords} from './left-out-words.ts'
import {amountWords, cautiousWords, numberWords} from './measure-words.ts'
import {type PanelGrid, panelFigure, panelGrid, panelHeading, panelWords} from './panel-grid.ts'
import {sentenceStart} from './sentence-start.ts'
import {lineHeight} from './text-lines.ts'

/** Individuals of each species of a scope in the order of their ranks, one panel for each habitat. */
export const rankAbundance: Chart = {
  name: 'rank-abundance',
  summary: 'Individuals of each species by rank, one panel for each habitat; one picture for each scope.',
  figures: (results) => results.scopes.map((scope) => figure(scope, italicNames(results.taxa)))
}

/** Species named in each panel. */
const named = 3
/** The axis starts a little below 1, so that symbols of species caught once stand free of it. */
const axisStart = 0.8

function figure(scope: ScopeResult, italics: ReadonlySet<string>): Figure {
  const base = {
    name: `rank-abundance-${scope.id}`,
    title: `Rank-abundance in each habitat: ${scope.label}`,
    alternative: alternative(scope),
    data: {
      columns: ['habitat_id', 'habitat', 'rank', 'taxon', 'individuals', 'share'],
      rows: scope.habitats.flatMap(({id, label, ranks}) =>
        ranks.map(({rank, taxon, individuals, share}) => [id, label, rank, taxon, individuals, share])
      )
    }
  }
  if (scope.habitats.length === 0) return {...base, notDrawn: 'no habitat is on record'}
  if (scope.habitats.every(({ranks}) => ranks.length === 0))
    return {...base, notDrawn: 'nothing in this scope was caught'}
  return {...base, spec: specification(scope.habitats, italics)}
}

function specification(
  habitats: readonly AssemblageResult[],
  italics: ReadonlySet<string>
): Record<string, unknown> {
  const grid = panelGrid(habitats.length)
  const all = habitats.flatMap(({ranks}) => ranks)
  const axes = {
    lastRank: Math.max(...all.map(({rank}) => rank)),
    mostIndividuals: Math.max(10, ...all.map(({individuals}) => individuals))
  }
  const panels = habitats.map((habitat, index) => panel(habitat, italics, grid, axes, grid.isLowest(index)))
  return panelFigure('individuals, logarithmic scale', panels, grid)
}

function panel(
  habitat: AssemblageResult,
  italics: ReadonlySet<string>,
  grid: PanelGrid,
  {lastRank, mostIndividuals}: {readonly lastRank: number; readonly mostIndividuals: number},
  lowest: boolean
): Record<string, unknown> {
  const {width, height} = grid
  // The names stand above the highest possible symbol, so that they can cover none.
  const namesHeight = named * lineHeight + 10
  const top = axisStart * (mostIndividuals / axisStart) ** (height / (height - namesHeight))
  const powers = [1, 10, 100, 1000, 10_000, 100_000, 1_000_000].filter((power) => power <= mostIndividuals)
  const points = habitat.ranks.map(({rank, individuals}) => ({
    rank,
    individuals,
    ...habitatFields(habitat.style)
  }))
  return {
    width,
    height,
    layer: [
      {
        data: {values: points},
        mark: {type: 'point', filled: true, size: width > 300 ? 50 : 26},
        encoding: {
          x: {
            field: 'rank',
            type: 'quantitative',
            title: lowest ? 'rank' : null,
            scale: {domain: [0, lastRank + 1], nice: false, zero: false},
            axis: {grid: false, values: rankTicks(lastRank), format: 'd'}
          },
          y: {
            field: 'individuals',
            type: 'quantitative',
            title: null,
            scale: {type: 'log', domain: [axisStart, top], nice: false},
            axis: {values: powers, format: ',d'}
          },
          color: habitatColour,
          shape: habitatShape
        }
      },
      ...panelHeading(habitat, width),
      ...(points.length === 0 ? [panelWords('none caught', grid)] : commonest(habitat, italics, width))
    ]
  }
}

/** Rank 1, and round ranks far enough apart for their labels. */
function rankTicks(lastRank: number): number[] {
  const step = [5, 10, 20, 50, 100, 200, 500, 1000].find((size) => lastRank / size <= 6) ?? 2000
  return [1, ...Array.from({length: Math.floor(lastRank / step)}, (_, index) => (index + 1) * step)]
}

/** The commonest species in the upper right corner, which a falling row of points leaves free. */
function commonest(
  {ranks}: AssemblageResult,
  italics: ReadonlySet<string>,
  width: number
): Record<string, unknown>[] {
  const lines = ranks.slice(0, named).map(({taxon, individuals}, index) => ({
    y: 6 + index * lineHeight,
    individuals: numberWords(individuals, 'count'),
    name: shownName(taxon),
    italic: italics.has(taxon)
  }))
  const longest = Math.max(...lines.map(({name}) => name.length))
  const left = Math.max(24, width - longest * italicLetterWidth)
  const text = (field: string, values: readonly object[], mark: Record<string, unknown>) => ({
    data: {values},
    mark: {type: 'text', baseline: 'middle', y: {expr: 'datum.y'}, ...mark},
    encoding: {text: {field, type: 'nominal'}}
  })
  return [
    text('individuals', lines, {align: 'right', x: left - 6}),
    text(
      'name',
      lines.filter(({italic}) => italic),
      {align: 'left', x: left, fontStyle: 'italic'}
    ),
    text(
      'name',
      lines.filter(({italic}) => !italic),
      {align: 'left', x: left}
    )
  ]
}

function alternative(scope: ScopeResult): string {
  const {label, habitats} = scope
  const each = habitats.map((habitat) => {
    if (habitat.ranks.length === 0) return `${sentenceStart(habitat.label)}: none caught.`
    const first = habitat.ranks
      .slice(0, named)
      .map(
        ({taxon, individuals, share}) =>
          `${taxon} (${numberWords(individuals, 'count')}, ${numberWords(share, 'share')})`
      )
    const {individuals, species, singletons} = habitat
    return (
      `${sentenceStart(habitat.label)}: ${amountWords(individuals, 'individual', 'individuals')} of ${cautiousWords(species)} species, ` +
      `${cautiousWords(singletons)} of them caught once; the commonest: ${listWords(first)}.`
    )
  })
  return [
    `${sentenceStart(label)}: points that fall from the commonest to the rarest species, one panel for each habitat,`,
    'individuals on a logarithmic scale.',
    ...each,
    ...leftOutWords(scope)
  ].join(' ')
}
