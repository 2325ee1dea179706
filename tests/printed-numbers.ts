import {formatNumber, formatPlain} from '../src/model/format-number.ts'
import type {MeasureKind} from '../src/model/quantity.ts'
import type {Results} from '../src/model/results.ts'

/** Every number of results, in every way in which a document may print it, by the path that leads to it. */
export function printedNumbers(results: Results): ReadonlyMap<string, readonly string[]> {
  const printed = new Map<string, readonly string[]>()
  const visit = (value: unknown, path: string): void => {
    if (typeof value === 'string') printed.set(path, numbersIn(value))
    else if (typeof value === 'number') printed.set(path, [formatPlain(value), String(value)])
    else if (Array.isArray(value))
      for (const [index, item] of value.entries()) visit(item, `${path}/${index}`)
    else if (typeof value === 'object' && value !== null) {
      const {
        kind,
        value: number,
        interval
      } = value as {
        kind?: MeasureKind
        value?: number
        interval?: {low: number; high: number; method: string}
      }
      if (kind !== undefined && number !== undefined) {
        const values = [number, ...(interval === undefined ? [] : [interval.low, interval.high])]
        // What kind of interval it is stands beside it, with the constants of its method.
        printed.set(path, [
          ...values.flatMap((each) => numbersIn(formatNumber(each, kind))),
          // A site report gives diversity as a whole number of kinds.
          ...(kind === 'diversity' ? numbersIn(formatNumber(number, 'count')) : []),
          ...numbersIn(interval?.method ?? '')
        ])
      }
      for (const [key, item] of Object.entries(value)) {
        if (kind === undefined || !['value', 'interval', 'standardError'].includes(key))
          visit(item, `${path}/${key}`)
      }
    }
  }
  visit(results, '')
  return printed
}

export function numbersIn(text: string): string[] {
  return text.replace(/\u2212/g, '-').match(/\d(?:[\d,.]*\d)?/g) ?? []
}
