import type {CrossReference} from '../document.ts'
import type {Directive} from './directive.ts'
import {numberedName} from './numbered-name.ts'

/** `:see[figure-effort]`: `Figure 2`; the figure may stand further on. */
export const see: Directive = {
  name: 'see',
  forms: ['text'],
  attributes: ['of'],
  evaluate(call) {
    const target = numberedName(call, call.label)
    if (target === undefined) return call.problem(`'${call.attributes.of}' is no id`)
    if (!/^(?:figure|table)-./.test(target))
      return call.problem(`see needs figure-... or table-..., not '${target}'`)
    const node: CrossReference = {type: 'crossReference', target, children: []}
    call.composition.crossReferences.push({node, place: call.place})
    return [node]
  }
}
