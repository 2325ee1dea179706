import {type Directive, words} from './directive.ts'
import {statedWords} from './stated-words.ts'

/** `:text[path]`: a study's own words (or stated number), as written. */
export const text: Directive = {
  name: 'text',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.read(call.label, (value) => {
      const stated = statedWords(value)
      return stated === undefined ? call.problem(`'${call.label}' is no text`) : words(stated)
    })
}
