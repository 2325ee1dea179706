import type {Directive} from './directive.ts'
import {placeNumbered} from './place-numbered.ts'

/** `:::table{name=effort-by-habitat}` caption `:::`: a numbered table. */
export const table: Directive = {
  name: 'table',
  forms: ['container'],
  attributes: ['name', 'of'],
  evaluate: (call) =>
    placeNumbered(call, 'table', call.composition.material.tables, ({name, shown, number, caption}) => ({
      type: 'tableBlock',
      name,
      number,
      table: shown,
      children: caption
    }))
}
