import {inkTones} from '../model/ink.ts'
import {isDefined} from '../model/quantity.ts'
import type {HabitatResult, RoundResult} from '../model/results.ts'
import {habitatFields} from './habitat-symbols.ts'
import {type MonthAxis, momentOf} from './month-axis.ts'
import {type PanelGrid, panelHeading, panelWords} from './panel-grid.ts'
import {type DrawnInterval, drawnInterval, type RateAxis, rateEncoding} from './rate-axis.ts'

/** A round of a habitat as it is drawn; without a value where nothing counts, which interrupts the line. */
export interface RoundPoint extends Partial<DrawnInterval> {
  readonly moment: number
  readonly value: number | null
  /** Of the line of the interval. */
  readonly strokeWidth?: number
}

/** The rounds of a habitat in the order of time; intervals of another than the main method are thin. */
export function roundPoints(
  {id}: HabitatResult,
  rounds: readonly RoundResult[],
  axis: RateAxis,
  mainMethod: string | undefined
): readonly RoundPoint[] {
  const points = rounds.map(({firstOpened, lastCollected, habitats}) => {
    const moment = (momentOf(firstOpened ?? lastCollected) + momentOf(lastCollected)) / 2
    const rate = habitats.find((habitat) => habitat.id === id)?.catch.rate
    if (rate === undefined || !isDefined(rate)) return {moment, value: null}
    const drawn = rate.interval && {
      ...drawnInterval(rate.interval, axis),
      strokeWidth: rate.interval.method === mainMethod ? 1.5 : 0.7
    }
    return {moment, value: rate.value, ...drawn}
  })
  return points.toSorted((one, other) => one.moment - other.moment)
}

/** One panel: the habitat's own points, intervals and line, before the lines of all others. */
export function seasonPanel(
  habitat: HabitatResult,
  index: number,
  series: readonly (readonly RoundPoint[])[],
  grid: PanelGrid,
  axis: RateAxis,
  months: MonthAxis
): Record<string, unknown> {
  const {width, height} = grid
  const {colour, shape} = habitatFields(habitat.style)
  const own = series[index] ?? []
  const x = {
    field: 'moment',
    type: 'temporal',
    title: grid.isLowest(index) ? months.title : null,
    scale: {type: 'utc', domain: months.domain, nice: false},
    axis: {
      values: months.ticks,
      labelExpr: months.labelExpression,
      labelOffset: months.labelOffset,
      labelOverlap: false
    }
  }
  const y = {
    field: 'value',
    ...rateEncoding(axis, 4),
    title: null
  }
  const others = series.flatMap((points, other) =>
    other === index ? [] : points.map((point) => ({...point, other}))
  )
  const ranged = own.filter(({low}) => low !== undefined)
  const cut = (end: 'low' | 'high', values: readonly RoundPoint[]) => ({
    data: {values},
    mark: {
      type: 'point',
      shape: end === 'low' ? 'triangle-down' : 'triangle-up',
      filled: true,
      size: 24,
      color: colour
    },
    encoding: {x, y: {...y, field: end}}
  })
  const blank = own.every(({value}) => value === null)
  return {
    width,
    height,
    layer: [
      {
        data: {values: others},
        mark: {type: 'line', strokeWidth: 1, color: inkTones.rule.light},
        encoding: {x, y, detail: {field: 'other', type: 'nominal'}}
      },
      {
        data: {values: ranged},
        mark: {type: 'rule', color: colour},
        encoding: {
          x,
          y: {...y, field: 'low'},
          y2: {field: 'high'},
          strokeWidth: {field: 'strokeWidth', type: 'quantitative', scale: null}
        }
      },
      cut(
        'low',
        ranged.filter(({cutLow}) => cutLow)
      ),
      cut(
        'high',
        ranged.filter(({cutHigh}) => cutHigh)
      ),
      {data: {values: own}, mark: {type: 'line', strokeWidth: 1.75, color: colour}, encoding: {x, y}},
      {
        data: {values: own.filter(({value}) => value !== null)},
        mark: {type: 'point', filled: true, size: 55, shape, color: colour},
        encoding: {x, y}
      },
      ...panelHeading(habitat, width),
      ...(blank ? [panelWords('no trap-night counts', grid)] : [])
    ]
  }
}
