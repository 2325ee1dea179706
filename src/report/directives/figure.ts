import type {Directive} from './directive.ts'
import {placeNumbered} from './place-numbered.ts'

/** `:::figure{name=effort}` caption `:::`: a numbered figure. */
export const figure: Directive = {
  name: 'figure',
  forms: ['container'],
  attributes: ['name', 'of'],
  evaluate: (call) =>
    placeNumbered(call, 'figure', call.composition.material.figures, ({name, shown, number, caption}) => ({
      type: 'figureBlock',
      name,
      number,
      figure: shown,
      children: caption
    }))
}
