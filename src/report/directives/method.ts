import {isDefined} from '../../model/quantity.ts'
import {type Directive, words} from './directive.ts'

/** `:method[path]`: how the interval of a measure was made. */
export const method: Directive = {
  name: 'method',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.readMeasure(call.label, (measure) =>
      isDefined(measure) && measure.interval
        ? words(measure.interval.method)
        : call.problem(`'${call.label}' has no interval; guard it with given`)
    )
}
