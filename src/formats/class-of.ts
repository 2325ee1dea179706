import type {Properties} from 'hast'

/** The class of an element where the condition holds; no attribute at all, rather than an empty one, where it does not. */
export function classOf(name: string, holds: boolean | undefined): Properties {
  return holds === true ? {className: [name]} : {}
}
