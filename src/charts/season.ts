import {formatDates, type Language, statedLanguage} from '../model/format-date.ts'
import {type Defined, type Interval, isDefined, type Measure} from '../model/quantity.ts'
import type {HabitatResult, Results, RoundResult} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {intervalMethods, methodNotes} from './interval-methods.ts'
import {cautionNotes, cautiousWords, confidenceWords} from './measure-words.ts'
import {monthAxis} from './month-axis.ts'
import {withNotes} from './notes.ts'
import {panelFigure, panelGrid} from './panel-grid.ts'
import {plainValue} from './plain-value.ts'
import {rateAxis} from './rate-axis.ts'
import {roundPoints, seasonPanel} from './season-panel.ts'
import {sentenceStart} from './sentence-start.ts'

/** Activity-density of each round, at the middle of its dates, one panel for each habitat. */
export const season: Chart = {
  name: 'season',
  summary: 'Individuals per 100 trap-nights in each round, with interval, one panel for each habitat.',
  figures: (results) => [figure(results)]
}

type RoundOfHabitat = RoundResult['habitats'][number]

function figure(results: Results): Figure {
  const {habitats, rounds} = results
  const base = {
    name: 'season',
    title: 'Activity-density through the season in each habitat',
    alternative: alternative(results),
    data: {
      columns: [
        'round_id',
        'first_opened',
        'last_collected',
        'habitat_id',
        'habitat',
        'individuals',
        'net_nights',
        'rate_per_100_nights',
        'low',
        'high',
        'confidence',
        'interval_method'
      ],
      rows: rounds.flatMap((round) => round.habitats.map((habitat) => dataRow(round, habitat)))
    }
  }
  if (habitats.length === 0) return {...base, notDrawn: 'no habitat is on record'}
  const withRate = rounds.filter((round) => round.habitats.some(({catch: {rate}}) => isDefined(rate)))
  if (withRate.length === 0) return {...base, notDrawn: 'no trap-night counts in any round'}
  if (withRate.length === 1)
    return {...base, notDrawn: 'trap-nights count in one round only, and a season takes at least two'}
  return {...base, spec: withNotes(specification(results), notes(results), 0)}
}

function dataRow(
  round: RoundResult,
  {id, label, catch: caught, effort}: RoundOfHabitat
): (string | number | null)[] {
  const interval = isDefined(caught.rate) ? caught.rate.interval : undefined
  return [
    round.id,
    round.firstOpened ?? null,
    round.lastCollected,
    id,
    label,
    plainValue(caught.individuals),
    plainValue(effort.net),
    plainValue(caught.rate),
    interval?.low ?? null,
    interval?.high ?? null,
    interval?.confidence ?? null,
    interval?.method ?? null
  ]
}

function notes({habitats, rounds, stated}: Results): readonly string[] {
  const language = statedLanguage(stated)
  const cautions = habitats.flatMap((habitat) =>
    roundsOf(habitat, rounds).flatMap(({round, rate}) =>
      cautionNotes(`${sentenceStart(habitat.label)}, ${datesOf(round, language)}`, [rate])
    )
  )
  return [...methodNotes(intervalMethods(intervalsOf(rounds))), ...cautions]
}

type DefinedMeasure = Measure & Defined

interface RoundRate {
  readonly round: RoundResult
  readonly rate: DefinedMeasure
}

/** The rounds in which a habitat has a rate. */
function roundsOf({id}: HabitatResult, rounds: readonly RoundResult[]): readonly RoundRate[] {
  return rounds.flatMap((round) => {
    const rate = round.habitats.find((habitat) => habitat.id === id)?.catch.rate
    return rate !== undefined && isDefined(rate) ? [{round, rate}] : []
  })
}

function ratesOf(rounds: readonly RoundResult[]): readonly DefinedMeasure[] {
  return rounds.flatMap(({habitats}) =>
    habitats.flatMap(({catch: {rate}}) => (isDefined(rate) ? [rate] : []))
  )
}

function intervalsOf(rounds: readonly RoundResult[]): readonly Interval[] {
  return ratesOf(rounds).flatMap(({interval}) => (interval === undefined ? [] : [interval]))
}

function specification({habitats, rounds}: Results): Record<string, unknown> {
  const grid = panelGrid(habitats.length)
  const main = intervalMethods(intervalsOf(rounds))?.main
  const rateScale = rateAxis({
    points: ratesOf(rounds).map(({value}) => value),
    intervals: intervalsOf(rounds)
  })
  const days = rounds.flatMap(({firstOpened, lastCollected}) => [firstOpened ?? lastCollected, lastCollected])
  const months = monthAxis(days, grid.width)
  const series = habitats.map((habitat) => roundPoints(habitat, rounds, rateScale, main))
  const panels = habitats.map((habitat, index) =>
    seasonPanel(habitat, index, series, grid, rateScale, months)
  )
  const scale = rateScale.type === 'log' ? ', logarithmic scale' : ''
  const others = habitats.length > 1 ? '; grey lines: the other habitats' : ''
  return panelFigure(`individuals per 100 trap-nights${scale}${others}`, panels, grid)
}

function alternative({habitats, rounds, stated}: Results): string {
  const language = statedLanguage(stated)
  if (rounds.length === 0) return 'There is no round, so there is no season to show.'
  const intervals = intervalsOf(rounds)
  const methods = [...new Set(intervals.map(({method}) => method))]
  const confidence = intervals[0]?.confidence
  return [
    'Points joined by lines, one panel for each habitat: individuals per 100 trap-nights in each round,',
    'at the middle of its dates.',
    ...(confidence === undefined
      ? []
      : [`Upright lines are ${confidenceWords(confidence)} intervals: ${methods.join('; or ')}.`]),
    ...habitats.map((habitat) => inWords(habitat.label, roundsOf(habitat, rounds), language))
  ].join(' ')
}

function inWords(label: string, own: readonly RoundRate[], language: Language): string {
  const [first, ...later] = own
  if (first === undefined) return `${sentenceStart(label)}: no trap-night counts.`
  if (later.length === 0) return `${sentenceStart(label)}: ${atRound(first, language)}.`
  const highest = own.reduce((best, other) => (other.rate.value > best.rate.value ? other : best))
  const lowest = own.reduce((best, other) => (other.rate.value < best.rate.value ? other : best))
  if (highest.rate.value === lowest.rate.value)
    return `${sentenceStart(label)}: ${cautiousWords(first.rate)} in each of its rounds.`
  return `${sentenceStart(label)}: highest ${atRound(highest, language)}, lowest ${atRound(lowest, language)}.`
}

function atRound({round, rate}: RoundRate, language: Language): string {
  return `${cautiousWords(rate)} in the round of ${datesOf(round, language)}`
}

function datesOf({firstOpened, lastCollected}: RoundResult, language: Language): string {
  return formatDates(firstOpened ?? lastCollected, lastCollected, language) ?? lastCollected
}
