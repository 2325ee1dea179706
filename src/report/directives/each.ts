import {bindItems} from './bind-items.ts'
import type {Directive} from './directive.ts'

/** `:::each{in=habitats as=habitat}`: the content, for every item of a list. */
export const each: Directive = {
  name: 'each',
  forms: ['container'],
  attributes: ['in', 'as'],
  evaluate(call) {
    const {in: path, as: name} = call.attributes
    if (path === undefined || name === undefined) return call.problem('each needs in=... and as=...')
    return call.read(path, (items) =>
      Array.isArray(items)
        ? bindItems(call.scope, items, path, name).flatMap((scope) => call.content(scope))
        : call.problem(`'${path}' is no list`)
    )
  }
}
