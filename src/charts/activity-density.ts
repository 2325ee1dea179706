import {listWords} from '../model/list-words.ts'
import {isDefined} from '../model/quantity.ts'
import type {HabitatResult, Results, SiteResult} from '../model/results.ts'
import {activityDensityLayers, intervalsOf, shownRates, sitesOf} from './activity-density-layers.ts'
import type {Chart, Figure} from './chart.ts'
import {intervalMethods, methodNotes} from './interval-methods.ts'
import {cautionNotes, cautiousWords, measureClause} from './measure-words.ts'
import {withNotes} from './notes.ts'
import {plainValue} from './plain-value.ts'
import {rowLabelWidth} from './row-labels.ts'
import {sentenceStart} from './sentence-start.ts'

/** Activity-density of each habitat with its interval, and that of its sites below it. */
export const activityDensity: Chart = {
  name: 'activity-density',
  summary: 'Individuals per 100 trap-nights in each habitat, with interval, and at each of its sites.',
  figures: (results) => [figure(results)]
}

function figure(results: Results): Figure {
  const {habitats, sites} = results
  const base = {
    name: 'activity-density',
    title: 'Activity-density in each habitat and at its sites',
    alternative: alternative(results),
    data: {
      columns: [
        'habitat_id',
        'habitat',
        'site_id',
        'individuals',
        'net_nights',
        'rate_per_100_nights',
        'low',
        'high',
        'confidence',
        'interval_method'
      ],
      rows: habitats.flatMap((habitat) => [
        dataRow(habitat, null),
        ...sitesOf(habitat, sites).map((site) => dataRow(habitat, site))
      ])
    }
  }
  if (habitats.length === 0) return {...base, notDrawn: 'no habitat is on record'}
  if (shownRates(results).length === 0) return {...base, notDrawn: 'no trap-night counts in any habitat'}
  return {...base, spec: withNotes(activityDensityLayers(results), notes(results), -rowLabelWidth)}
}

function dataRow(habitat: HabitatResult, site: SiteResult | null): (string | number | null)[] {
  const {catch: caught, effort} = site ?? habitat
  const interval = isDefined(caught.rate) ? caught.rate.interval : undefined
  return [
    habitat.id,
    habitat.label,
    site === null ? null : site.id,
    plainValue(caught.individuals),
    plainValue(effort.net),
    plainValue(caught.rate),
    interval?.low ?? null,
    interval?.high ?? null,
    interval?.confidence ?? null,
    interval?.method ?? null
  ]
}

function notes({habitats}: Results): readonly string[] {
  return [
    ...methodNotes(intervalMethods(intervalsOf(habitats))),
    ...habitats.flatMap(({label, catch: {rate}}) => cautionNotes(sentenceStart(label), [rate]))
  ]
}

function alternative(results: Results): string {
  const {habitats, sites} = results
  if (habitats.length === 0) return 'There is no habitat, so there is no activity-density to show.'
  const each = habitats.map(
    (habitat) =>
      `${sentenceStart(habitat.label)}: ${measureClause(habitat.catch.rate)}${siteRange(sitesOf(habitat, sites))}.`
  )
  return [
    'Points on a scale of individuals per 100 trap-nights, one for each habitat.',
    ...each,
    ...howMade(habitats)
  ].join(' ')
}

function siteRange(sites: readonly SiteResult[]): string {
  const rates = sites.flatMap(({catch: {rate}}) => (isDefined(rate) ? [rate] : []))
  const sorted = rates.toSorted((one, other) => one.value - other.value)
  const [lowest, highest] = [sorted[0], sorted.at(-1)]
  if (lowest === undefined || highest === undefined || rates.length < 2) return ''
  if (lowest.value === highest.value) return `; ${cautiousWords(lowest)} at each of its ${rates.length} sites`
  return `; its ${rates.length} sites from ${cautiousWords(lowest)} to ${cautiousWords(highest)}`
}

/** The method of each interval, grouped, because a range of counting error only says nothing of the habitat. */
function howMade(habitats: readonly HabitatResult[]): string[] {
  const methods = [...new Set(intervalsOf(habitats).map(({method}) => method))]
  return methods.map((method) => {
    const withIt = habitats.filter(({catch: {rate}}) => isDefined(rate) && rate.interval?.method === method)
    return `Interval of ${listWords(withIt.map(({label}) => label))}: ${method}.`
  })
}
