import {formatInterval} from '../format-measure.ts'
import {type Directive, words} from './directive.ts'

/** `:interval[path]`: `41.0 to 66.9`. */
export const interval: Directive = {
  name: 'interval',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.readMeasure(call.label, (measure) => {
      const range = formatInterval(measure)
      return range === undefined
        ? call.problem(`'${call.label}' has no interval; guard it with given`)
        : words(range)
    })
}
