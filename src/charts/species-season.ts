import {formatDates, type Language, statedLanguage} from '../model/format-date.ts'
import {inkTones} from '../model/ink.ts'
import type {Results, RoundResult, ScopeResult, SpeciesSeasonResult} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {italicNames} from './italic-names.ts'
import {measureWords} from './measure-words.ts'
import {momentOf, monthAxis} from './month-axis.ts'
import {nameColumn, nameColumnWidth} from './name-column.ts'
import {withNotes} from './notes.ts'
import {sentenceStart} from './sentence-start.ts'

/** When each common species was caught: a row of bars over the season for each, against its own highest. */
export const speciesSeason: Chart = {
  name: 'species-season',
  summary:
    'Activity-density of each common species by round, against its own highest; one picture for each scope.',
  figures: (results) => results.scopes.map((scope) => figure(scope, results))
}

const plotWidth = 380
const rowHeight = 26
const barHeight = 20
const mostSpecies = 15
/** Species whose rounds the description tells; the data have all. */
const mostTold = 8
const aDay = 86_400_000

function figure(scope: ScopeResult, results: Results): Figure {
  const {season} = scope
  const {rounds} = results
  const base = {
    name: `species-season-${scope.id}`,
    title: `When the common species were caught: ${scope.label}`,
    alternative: alternative(scope, statedLanguage(results.stated)),
    data: {
      columns: ['taxon', 'round_id', 'first_opened', 'last_collected', 'rate_per_100_nights'],
      rows: season.flatMap(({taxon, rates}) =>
        rounds.map((round, index) => [
          taxon,
          round.id,
          round.firstOpened ?? null,
          round.lastCollected,
          rates[index] ?? null
        ])
      )
    }
  }
  if (season.length === 0)
    return {...base, notDrawn: 'no species was caught often enough to tell of its season'}
  const counted = rounds.filter((_, index) => season.some(({rates}) => typeof rates[index] === 'number'))
  if (counted.length < 2)
    return {...base, notDrawn: 'trap-nights count in one round only, and a season takes at least two'}
  const gaps = counted.length < rounds.length
  const notes = [
    'Each row by itself: the highest bar of a species is its highest activity-density, given on the right.',
    ...(gaps ? ['Where there is no base line, no trap-night counts.'] : []),
    ...(season.length > mostSpecies ? [`The ${mostSpecies} commonest of ${season.length} species.`] : [])
  ]
  const picture = specification(season.slice(0, mostSpecies), rounds, italicNames(results.taxa))
  return {...base, spec: withNotes(picture, notes, -nameColumnWidth)}
}

function specification(
  season: readonly SpeciesSeasonResult[],
  rounds: readonly RoundResult[],
  italics: ReadonlySet<string>
): Record<string, unknown> {
  const height = season.length * rowHeight
  const days = rounds.flatMap(({firstOpened, lastCollected}) => [firstOpened ?? lastCollected, lastCollected])
  const months = monthAxis(days, plotWidth)
  const bars = season.flatMap(({rates}, row) => {
    const largest = Math.max(...rates.map((rate) => rate ?? 0))
    return rounds.flatMap(({firstOpened, lastCollected}, index) => {
      const rate = rates[index]
      if (rate === null || rate === undefined) return []
      const end = momentOf(lastCollected)
      const start = firstOpened === undefined ? end - aDay : momentOf(firstOpened)
      const base = (row + 1) * rowHeight - 3
      const top = base - (largest > 0 ? (rate / largest) * barHeight : 0)
      return [{start, end, base, top, rate}]
    })
  })
  const scale = {domain: [0, height], range: [0, height], nice: false, zero: false}
  const x = {
    field: 'start',
    type: 'quantitative',
    title: months.title,
    scale: {domain: months.domain, nice: false, zero: false},
    axis: {
      grid: false,
      values: months.ticks,
      tickCount: months.ticks.length,
      labelExpr: months.labelExpression,
      labelOffset: months.labelOffset,
      labelOverlap: false
    }
  }
  const upright = (field: string) => ({field, type: 'quantitative', scale, axis: null})
  return {
    width: plotWidth,
    height,
    layer: [
      {
        data: {values: bars},
        mark: {type: 'rule', strokeWidth: 0.75, color: inkTones.muted.light},
        encoding: {x, x2: {field: 'end'}, y: upright('base')}
      },
      {
        data: {values: bars.filter(({rate}) => rate > 0)},
        mark: {
          type: 'rect',
          color: inkTones.muted.light,
          opacity: 0.75,
          stroke: inkTones.paper.light,
          strokeWidth: 1
        },
        encoding: {x, x2: {field: 'end'}, y: upright('top'), y2: {field: 'base'}}
      },
      ...nameColumn(
        season.map(({taxon}, row) => ({name: taxon, middle: (row + 0.5) * rowHeight + 3})),
        italics
      ),
      ...highest(season)
    ]
  }
}

/** The highest activity-density of each species, right of its bars. */
function highest(season: readonly SpeciesSeasonResult[]): Record<string, unknown>[] {
  const mark = {type: 'text', align: 'left', baseline: 'middle', x: plotWidth + 12}
  const encoding = {text: {field: 'text', type: 'nominal'}}
  return [
    {
      data: {
        values: season.map(({highest: {rate}}, row) => ({
          text: measureWords(rate),
          middle: (row + 0.5) * rowHeight + 3
        }))
      },
      mark: {...mark, y: {expr: 'datum.middle'}},
      encoding
    },
    {
      data: {
        values: [
          {text: 'highest, per', middle: -17},
          {text: '100 trap-nights', middle: -4}
        ]
      },
      mark: {...mark, color: inkTones.muted.light, y: {expr: 'datum.middle'}},
      encoding
    }
  ]
}

function alternative({label, season}: ScopeResult, language: Language): string {
  if (season.length === 0)
    return `${sentenceStart(label)}: no species was caught often enough to tell of its season.`
  const told = season.slice(0, mostTold)
  const more = season.length - told.length
  const each = told.map(
    ({taxon, first, last, highest: most}) =>
      `${taxon}: first in the round of ${datesOf(first, language)}, last in that of ${datesOf(last, language)}, most in that of ${datesOf(most, language)} (${measureWords(most.rate)} per 100 trap-nights).`
  )
  return [
    `${sentenceStart(label)}: a row of bars for each common species, one bar for each round, each species against its own highest.`,
    ...each,
    ...(more > 0 ? [`And ${more} more, in the data below.`] : [])
  ].join(' ')
}

function datesOf({opened, collected}: SpeciesSeasonResult['first'], language: Language): string {
  return formatDates(opened ?? collected, collected, language) ?? collected
}
