import type {PhrasingContent, RootContent} from 'mdast'
import {nearestName} from '../../model/nearest-name.ts'
import type {DirectiveCall} from './directive.ts'
import {numberedName} from './numbered-name.ts'

/** A figure or table that is being placed: its full name, what it shows, its number and its caption. */
interface Numbered<Shown> {
  readonly name: string
  readonly shown: Shown
  readonly number: number
  readonly caption: PhrasingContent[]
}

/** Finds a figure or table by the name in the template, gives it the next number, and makes the content its caption. */
export function placeNumbered<Shown>(
  call: DirectiveCall,
  kind: 'figure' | 'table',
  all: ReadonlyMap<string, Shown>,
  make: (numbered: Numbered<Shown>) => RootContent
): RootContent[] {
  const {name: written} = call.attributes
  if (written === undefined) return call.problem(`${kind} needs name=...`)
  const name = numberedName(call, written)
  if (name === undefined) return call.problem(`'${call.attributes.of}' is no id`)
  const shown = all.get(name)
  if (shown === undefined)
    return call.problem(`unknown ${kind} '${name}'`, nearestName(name, [...all.keys()]))
  const {placed} = call.composition
  const id = `${kind}-${name}`
  if (placed.has(id))
    return call.problem(`${kind} '${name}' stands in this document already; refer to it with :see[${id}]`)
  const number = [...placed.keys()].filter((other) => other.startsWith(`${kind}-`)).length + 1
  placed.set(id, number)
  return [make({name, shown, number, caption: captionOf(call)})]
}

/** The paragraphs of the content, run together: a caption is one stretch of text. */
function captionOf(call: DirectiveCall): PhrasingContent[] {
  return call.content().flatMap((block, index): PhrasingContent[] => {
    if (block.type !== 'paragraph') {
      call.problem('a caption holds text only')
      return []
    }
    return index === 0 ? block.children : [{type: 'text', value: ' '}, ...block.children]
  })
}
