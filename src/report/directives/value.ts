import {formatPlain} from '../../model/format-number.ts'
import {asMeasure} from '../as-measure.ts'
import {formatMeasure} from '../format-measure.ts'
import {type Directive, words} from './directive.ts'
import {measureStyle} from './measure-style.ts'

/** `:value[path]`: the number without its unit. */
export const value: Directive = {
  name: 'value',
  forms: ['text'],
  attributes: ['words', 'start', 'whole'],
  evaluate: (call) =>
    call.read(call.label, (found) => {
      const measure = asMeasure(found)
      if (measure) return words(formatMeasure(measure, measureStyle(call)))
      return typeof found === 'number'
        ? words(formatPlain(found))
        : call.problem(`'${call.label}' is no number`)
    })
}
