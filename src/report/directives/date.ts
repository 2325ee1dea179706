import {formatDate, statedLanguage} from '../../model/format-date.ts'
import {type Directive, words} from './directive.ts'

/** `:date[path]`: `14 June 2026`. */
export const date: Directive = {
  name: 'date',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.read(call.label, (value) => {
      const day =
        typeof value === 'string'
          ? formatDate(value, statedLanguage(call.composition.material.results.stated))
          : undefined
      return day === undefined ? call.problem(`'${call.label}' is no date`) : words(day)
    })
}
