import {asSentence, plainText, withoutStop, withStop} from '../plain-text.ts'
import {type Directive, words} from './directive.ts'
import {statedWords} from './stated-words.ts'

/**
 * `:sentence[path]`: a study's own words, set as a sentence. `{start=no}` leaves the first letter as written, for
 * words after a colon; `{end=no}` leaves the full stop off, for words within a sentence of ours.
 */
export const sentence: Directive = {
  name: 'sentence',
  forms: ['text'],
  attributes: ['start', 'end'],
  evaluate: (call) =>
    call.read(call.label, (value) => {
      const stated = statedWords(value)
      if (stated === undefined) return call.problem(`'${call.label}' is no text`)
      const {start, end} = call.attributes
      const own = start === 'no' ? withStop(plainText(stated)) : asSentence(stated)
      return words(end === 'no' ? withoutStop(own) : own)
    })
}
