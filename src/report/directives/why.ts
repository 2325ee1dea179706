import {isDefined} from '../../model/quantity.ts'
import {type Directive, words} from './directive.ts'

/** `:why[path]`: the reason why a measure has no value. */
export const why: Directive = {
  name: 'why',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.readMeasure(call.label, (measure) =>
      isDefined(measure)
        ? call.problem(`'${call.label}' has a value; guard it with given`)
        : words(measure.notDefined)
    )
}
