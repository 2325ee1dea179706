import {asMeasure} from '../as-measure.ts'
import {isSingular} from '../format-measure.ts'
import {type Directive, words} from './directive.ts'

/** `:plural[path]{one="was" many="were"}`: the word that agrees with a number or with the length of a list. */
export const plural: Directive = {
  name: 'plural',
  forms: ['text'],
  attributes: ['one', 'many'],
  evaluate(call) {
    const {one, many} = call.attributes
    if (one === undefined || many === undefined) return call.problem('plural needs one="..." and many="..."')
    return call.read(call.label, (value) => {
      const measure = asMeasure(value)
      if (measure) return words(isSingular(measure) ? one : many)
      if (Array.isArray(value)) return words(value.length === 1 ? one : many)
      return typeof value === 'number'
        ? words(value === 1 ? one : many)
        : call.problem(`'${call.label}' is no number`)
    })
  }
}
