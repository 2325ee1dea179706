import {formatAmount} from '../format-measure.ts'
import {type Directive, words} from './directive.ts'
import {measureStyle} from './measure-style.ts'

/** `:amount[path]`: the number with the word for what was counted. */
export const amount: Directive = {
  name: 'amount',
  forms: ['text'],
  attributes: ['words', 'start'],
  evaluate: (call) =>
    call.readMeasure(call.label, (measure) => words(formatAmount(measure, measureStyle(call))))
}
