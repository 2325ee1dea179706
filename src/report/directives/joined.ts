import type {RootContent} from 'mdast'
import {joinWords} from '../join-words.ts'
import {bindItems} from './bind-items.ts'
import type {Directive} from './directive.ts'

/** `:joined[content]{each=habitats as=habitat}`: the content for every item, as a row of a sentence. */
export const joined: Directive = {
  name: 'joined',
  forms: ['text'],
  attributes: ['each', 'as', 'with'],
  evaluate(call) {
    const {each: path, as: name, with: mark} = call.attributes
    if (path === undefined || name === undefined) return call.problem('joined needs each=... and as=...')
    return call.read(path, (items) => {
      if (!Array.isArray(items)) return call.problem(`'${path}' is no list`)
      const parts = bindItems(call.scope, items, path, name)
        .map((scope) => call.content(scope))
        .filter((part) => part.length > 0)
      const between = (value: string): RootContent[] => [{type: 'text', value}]
      return joinWords(parts, between, mark).flat()
    })
  }
}
