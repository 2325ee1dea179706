import {nearestName} from '../model/nearest-name.ts'
import type {Results} from '../model/results.ts'
import {namesOf, resultsShape, type Shape, shapeOf} from './results-shape.ts'

/** A value that a template can name, with its shape where that is known. */
export interface Binding {
  readonly value: unknown
  readonly shape: Shape | undefined
}

/** The names in force at a point of a template: those bound by `each` first, then the results. */
export interface Scope {
  readonly names: ReadonlyMap<string, Binding>
  readonly root: Binding
}

/**
 * What a path leads to. `absent` is a name that the results can have and this study leaves empty; `unknown`
 * is a name that they never have, most often a slip of the pen.
 */
export type LookUp =
  | ({readonly status: 'found'} & Binding)
  | {readonly status: 'absent'; readonly shape: Shape | undefined}
  | {readonly status: 'unknown'; readonly part: string; readonly nearest?: string}

/** The scope of a whole document: the results, and the names that it is given besides (`site` of a site report). */
export function rootScope(results: Results, given: Readonly<Record<string, unknown>> = {}): Scope {
  const root: Binding = {value: results, shape: resultsShape}
  const names = Object.entries(given).map(([name, value]): [string, Binding] => [
    name,
    {value, shape: shapeWithin(results, value)}
  ])
  return {root, names: new Map(names)}
}

/** The same scope with more names, which hide older ones. */
export function bind(scope: Scope, names: Iterable<readonly [string, Binding]>): Scope {
  return {...scope, names: new Map([...scope.names, ...names])}
}

/** Follows a dotted path. A list is entered by index or by the id of an item. */
export function lookUp(scope: Scope, path: string): LookUp {
  const [first = '', ...rest] = path.split('.')
  let current = scope.names.get(first)
  const parts = current === undefined ? [first, ...rest] : rest
  current ??= scope.root
  for (const part of parts) {
    const shape = shapeOf(current.shape, part)
    const value = entered(current.value, part)
    if (value === undefined && shape === undefined) {
      if (current.shape === undefined && current.value === undefined)
        return {status: 'absent', shape: undefined}
      return unknown(scope, part, current, current === scope.root)
    }
    current = {value, shape}
  }
  return current.value === undefined || current.value === null
    ? {status: 'absent', shape: current.shape}
    : {status: 'found', ...current}
}

/** An entry of a list by index or id, or of an object by name; only what it holds itself. */
function entered(value: unknown, part: string): unknown {
  if (Array.isArray(value)) {
    const items: readonly unknown[] = value
    const named = items.find(
      (item) => typeof item === 'object' && item !== null && 'id' in item && item.id === part
    )
    return named ?? (/^\d+$/.test(part) ? items[Number(part)] : undefined)
  }
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined
  return (value as Readonly<Record<string, unknown>>)[part]
}

function unknown(scope: Scope, part: string, {value, shape}: Binding, atRoot: boolean): LookUp {
  const own = typeof value === 'object' && value !== null && !Array.isArray(value) ? Object.keys(value) : []
  const nearest = nearestName(part, [
    ...new Set([...own, ...namesOf(shape), ...(atRoot ? scope.names.keys() : [])])
  ])
  return {status: 'unknown', part, ...(nearest !== undefined && {nearest})}
}

/** The shape of a thing that stands in one of the lists of the results, such as a site. */
function shapeWithin(results: Results, value: unknown): Shape | undefined {
  for (const [name, list] of Object.entries(results)) {
    if (Array.isArray(list) && (list as readonly unknown[]).includes(value)) {
      return shapeOf(shapeOf(resultsShape, name), '0')
    }
  }
  return undefined
}
