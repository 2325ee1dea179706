import {isDefined} from '../../model/quantity.ts'
import {type Directive, words} from './directive.ts'

/** `:caution[path]`: the caution that goes with a measure. */
export const caution: Directive = {
  name: 'caution',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.readMeasure(call.label, (measure) =>
      isDefined(measure) && measure.caution !== undefined
        ? words(measure.caution)
        : call.problem(`'${call.label}' has no caution; guard it with given`)
    )
}
