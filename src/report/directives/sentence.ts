import {asSentence} from '../plain-text.ts'
import {type Directive, words} from './directive.ts'
import {statedWords} from './stated-words.ts'

/** `:sentence[path]`: a study's own words, set as a sentence. */
export const sentence: Directive = {
  name: 'sentence',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.read(call.label, (value) => {
      const stated = statedWords(value)
      return stated === undefined ? call.problem(`'${call.label}' is no text`) : words(asSentence(stated))
    })
}
