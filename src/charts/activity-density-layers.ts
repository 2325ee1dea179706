import {inkTones} from '../model/ink.ts'
import {type Interval, isDefined} from '../model/quantity.ts'
import type {HabitatResult, Results, SiteResult} from '../model/results.ts'
import {habitatColour, habitatFields, habitatShape} from './habitat-symbols.ts'
import {intervalMethods} from './interval-methods.ts'
import {confidenceWords, intervalWords, measureWords} from './measure-words.ts'
import {drawnInterval, type RateAxis, rateAxis, rateEncoding} from './rate-axis.ts'
import {rowHeight, rowLabels, rowPosition} from './row-labels.ts'

const plotWidth = 310
/** Sites stand below the habitat's own point, so that neither hides the other. */
const siteOffset = 11

/** The sites of a habitat. */
export function sitesOf({id}: HabitatResult, sites: readonly SiteResult[]): readonly SiteResult[] {
  return sites.filter(({habitat}) => habitat === id)
}

/** Every rate that is drawn, of habitats and sites. */
export function shownRates({habitats, sites}: Results): number[] {
  return [...habitats, ...sites].flatMap(({catch: {rate}}) => (isDefined(rate) ? [rate.value] : []))
}

/** The intervals that are drawn. */
export function intervalsOf(habitats: readonly HabitatResult[]): Interval[] {
  return habitats.flatMap(({catch: {rate}}) =>
    isDefined(rate) && rate.interval !== undefined ? [rate.interval] : []
  )
}

/** One row for each habitat: its point and interval, its sites below, its numbers to the right. */
export function activityDensityLayers(results: Results): Record<string, unknown> {
  const {habitats, sites} = results
  const intervals = intervalsOf(habitats)
  const main = intervalMethods(intervals)?.main
  const axis = rateAxis({points: shownRates(results), intervals})
  const x = {
    field: 'value',
    ...rateEncoding(axis, 5),
    title:
      axis.type === 'log'
        ? 'individuals per 100 trap-nights, logarithmic scale'
        : 'individuals per 100 trap-nights'
  }
  const look = {color: habitatColour, shape: habitatShape}
  const marked = habitats.map((habitat, row) => ({row, habitat, look: habitatFields(habitat.style)}))
  const siteDots = marked.flatMap(({row, habitat, look: fields}) =>
    sitesOf(habitat, sites).flatMap(({catch: {rate}}) =>
      isDefined(rate) ? [{row, value: rate.value, ...fields}] : []
    )
  )
  const points = marked.flatMap(({row, habitat, look: fields}) => {
    const {rate} = habitat.catch
    if (!isDefined(rate)) return []
    const drawn = rate.interval && {
      ...drawnInterval(rate.interval, axis),
      strokeWidth: rate.interval.method === main ? 2 : 0.8
    }
    return [{row, value: rate.value, ...fields, ...drawn}]
  })
  const ranges = points.filter(({low}) => low !== undefined)
  return {
    width: plotWidth,
    height: {step: rowHeight(habitats, 46)},
    layer: [
      {
        data: {values: siteDots},
        mark: {type: 'point', filled: false, size: 34, strokeWidth: 1, opacity: 1, yOffset: siteOffset},
        encoding: {x, y: rowPosition, ...look}
      },
      {
        data: {values: ranges},
        mark: {type: 'rule', yOffset: -3},
        encoding: {
          x: {...x, field: 'low'},
          x2: {field: 'high'},
          y: rowPosition,
          color: look.color,
          strokeWidth: {field: 'strokeWidth', type: 'quantitative', scale: null}
        }
      },
      cutEnds(
        ranges.filter(({cutLow}) => cutLow),
        'low',
        x,
        look.color
      ),
      cutEnds(
        ranges.filter(({cutHigh}) => cutHigh),
        'high',
        x,
        look.color
      ),
      {
        data: {values: points},
        mark: {type: 'point', filled: true, size: 110, opacity: 1, yOffset: -3},
        encoding: {x, y: rowPosition, ...look}
      },
      ...rowLabels(habitats),
      ...siteWords(siteDots, axis, x),
      ...numbers(habitats)
    ]
  }
}

/** Arrowheads where an interval goes on beyond the axis. */
function cutEnds(
  values: readonly object[],
  end: 'low' | 'high',
  x: Record<string, unknown>,
  color: Record<string, unknown>
): Record<string, unknown> {
  return {
    data: {values},
    mark: {
      type: 'point',
      shape: end === 'low' ? 'triangle-left' : 'triangle-right',
      filled: true,
      size: 44,
      opacity: 1,
      yOffset: -3
    },
    encoding: {x: {...x, field: end}, y: rowPosition, color}
  }
}

/** 'each site', once, beside the dots that leave most room to their right or left. */
function siteWords(
  dots: readonly {readonly row: number; readonly value: number}[],
  {type, domain}: RateAxis,
  x: Record<string, unknown>
): Record<string, unknown>[] {
  const place = (value: number) => {
    const along = type === 'log' ? (v: number) => Math.log(v) : (v: number) => v
    return ((along(value) - along(domain[0])) / (along(domain[1]) - along(domain[0]))) * plotWidth
  }
  const rooms = [...new Set(dots.map(({row}) => row))].flatMap((row) => {
    const values = dots.filter((dot) => dot.row === row).map(({value}) => value)
    const [first, last] = [Math.min(...values), Math.max(...values)]
    return [
      {row, value: last, room: plotWidth - place(last), align: 'left', dx: 8},
      {row, value: first, room: place(first), align: 'right', dx: -8}
    ]
  })
  const widest = rooms.toSorted((one, other) => other.room - one.room)[0]
  if (widest === undefined || widest.room < 62) return []
  const {row, value, align, dx} = widest
  return [
    {
      data: {values: [{row, value, text: 'each site'}]},
      mark: {type: 'text', align, baseline: 'middle', dx, yOffset: siteOffset, color: inkTones.muted.light},
      encoding: {x, y: rowPosition, text: {field: 'text', type: 'nominal'}}
    }
  ]
}

/** The numbers to the right of the plot, under a head that says what they are. */
function numbers(habitats: readonly HabitatResult[]): Record<string, unknown>[] {
  const left = plotWidth + 22
  const values = habitats.map(({catch: {rate}}, row) => ({
    row,
    rate: measureWords(rate),
    range: intervalWords(rate) ?? ''
  }))
  const confidence = intervalsOf(habitats)[0]?.confidence
  const column = (field: string, mark: Record<string, unknown>) => ({
    data: {values},
    mark: {type: 'text', align: 'left', baseline: 'middle', x: left, ...mark},
    encoding: {y: rowPosition, text: {field, type: 'nominal'}}
  })
  const head = confidence === undefined ? 'rate' : `rate and ${confidenceWords(confidence)} interval`
  return [
    column('rate', {dy: -4, fontWeight: 'bold'}),
    column('range', {dy: 10}),
    {
      data: {values: [{text: head}]},
      mark: {type: 'text', align: 'left', baseline: 'middle', x: left, y: -10, color: inkTones.muted.light},
      encoding: {text: {field: 'text', type: 'nominal'}}
    }
  ]
}
