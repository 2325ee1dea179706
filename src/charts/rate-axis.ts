/** What an axis of rates must hold: the points themselves, and the ends of their intervals. */
export interface RateValues {
  /** Rates of habitats, sites or rounds. */
  readonly points: readonly number[]
  readonly intervals: readonly {readonly low: number; readonly high: number}[]
}

export interface RateAxis {
  readonly type: 'linear' | 'log'
  readonly domain: readonly [number, number]
}

/**
 * The axis on which rates are drawn. It starts at 0, and is logarithmic only where rates lie so far apart that the
 * small ones could not be told from nothing, and none of them is nothing. With very few sampling units an interval
 * may reach many times further than any rate; the axis then ends before it, and the interval is drawn as cut.
 */
export function rateAxis({points, intervals}: RateValues): RateAxis {
  const largest = Math.max(...points)
  const smallest = Math.min(...points)
  const lows = intervals.map(({low}) => low)
  const highs = intervals.map(({high}) => high)
  if (smallest > 0 && largest / smallest >= logarithmicFrom) {
    const start = Math.max(smallest / 10, Math.min(smallest, ...lows))
    return {type: 'log', domain: [start / 1.15, Math.min(largest * 10, Math.max(largest, ...highs)) * 1.15]}
  }
  const end = Math.min(Math.max(largest, ...highs), largest > 0 ? largest * 2.5 : Number.POSITIVE_INFINITY)
  return {type: 'linear', domain: [0, end > 0 ? end * 1.04 : 1]}
}

const logarithmicFrom = 50

/** Scale and axis of a position channel, as the chart language has them. */
export function rateEncoding({type, domain}: RateAxis, tickCount: number): Record<string, unknown> {
  if (type === 'linear') {
    return {type: 'quantitative', scale: {domain, nice: false, zero: false}, axis: {tickCount, format: ',~r'}}
  }
  const values = logarithmicTicks(domain)
  return {type: 'quantitative', scale: {type, domain, nice: false}, axis: {values, format: ',~r'}}
}

/** Powers of ten within the domain, with their doubles and fives where there are few. */
function logarithmicTicks([start, end]: readonly [number, number]): number[] {
  const [first, last] = [Math.floor(Math.log10(start)), Math.ceil(Math.log10(end))]
  const steps = last - first > 3 ? [1] : [1, 2, 5]
  const powers = Array.from({length: last - first + 1}, (_, index) => first + index)
  return powers
    .flatMap((power) => steps.map((step) => Number(`${step}e${power}`)))
    .filter((tick) => tick >= start && tick <= end)
}

/** An interval as far as the axis shows it, and at which ends it is cut. */
export interface DrawnInterval {
  readonly low: number
  readonly high: number
  readonly cutLow: boolean
  readonly cutHigh: boolean
}

export function drawnInterval(
  interval: {readonly low: number; readonly high: number},
  {domain}: RateAxis
): DrawnInterval {
  const [start, end] = domain
  return {
    low: Math.max(interval.low, start),
    high: Math.min(interval.high, end),
    cutLow: interval.low < start,
    cutHigh: interval.high > end
  }
}
