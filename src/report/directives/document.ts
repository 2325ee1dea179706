import {plainText} from '../plain-text.ts'
import type {Directive} from './directive.ts'

/** `:document[document]`: a link to a document of the report, from its `title` and `href`, for the front page. */
export const document: Directive = {
  name: 'document',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.read(call.label, (value) => {
      const {name, title, href} = Object(value) as Readonly<Record<string, unknown>>
      if (typeof name !== 'string' || typeof title !== 'string' || typeof href !== 'string') {
        return call.problem(`'${call.label}' is no document`)
      }
      return [{type: 'documentLink', name, href, children: [{type: 'text', value: plainText(title)}]}]
    })
}
