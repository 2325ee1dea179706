import type {DirectiveCall} from './directive.ts'

/** The full name of a figure or table: `name`, followed by the id that `of` leads to. Undefined when it cannot be told. */
export function numberedName(call: DirectiveCall, name: string): string | undefined {
  const path = call.attributes.of
  if (path === undefined) return name
  const found = call.lookUp(path)
  const id = found.status === 'found' ? found.value : undefined
  return typeof id === 'string' || typeof id === 'number' ? `${name}-${id}` : undefined
}
