import {isDefined} from '../../model/quantity.ts'
import {asMeasure, comparable, holds} from '../as-measure.ts'
import type {Directive, DirectiveCall} from './directive.ts'

const attributes = [
  'path',
  'not',
  'is',
  'isnt',
  'above',
  'below',
  'same',
  'differs',
  'contains',
  'defined',
  'undefined',
  'interval',
  'caution'
]

const comparisons = ['is', 'isnt', 'above', 'below', 'same', 'differs', 'contains']

/**
 * `:given[content]{path=...}` and `:::given{path=...}`: the content only if every condition holds. A comparison
 * (`is`, `isnt`, `above`, `below`, `same`, `differs`, `contains`) belongs to `path` and takes the place of its plain test.
 */
export const given: Directive = {
  name: 'given',
  forms: ['text', 'container'],
  attributes,
  evaluate(call) {
    const conditions = Object.keys(call.attributes).filter((name) => attributes.includes(name))
    if (conditions.length === 0) return call.problem('given needs a condition')
    return conditions.every((name) => condition(call, name)) ? call.content() : []
  }
}

function condition(call: DirectiveCall, name: string): boolean {
  const asked = call.attributes[name] ?? ''
  switch (name) {
    case 'path': {
      const compared = comparisons.some((other) => other in call.attributes)
      const value = valueAt(call, asked)
      return compared || holds(value)
    }
    case 'not':
      return !holds(valueAt(call, asked))
    case 'is':
      return equals(comparedValue(call), asked)
    case 'isnt':
      return !equals(comparedValue(call), asked)
    case 'above':
    case 'below':
      return exceeds(call, name, asked)
    case 'same':
      return isSame(comparedValue(call), valueAt(call, asked))
    case 'differs':
      return !isSame(comparedValue(call), valueAt(call, asked))
    case 'contains': {
      const value = comparedValue(call)
      return typeof value === 'string' && value.toLowerCase().includes(asked.toLowerCase())
    }
    case 'defined':
      return isThere(valueAt(call, asked))
    case 'undefined':
      return !isThere(valueAt(call, asked))
    case 'interval':
    case 'caution': {
      const measure = asMeasure(valueAt(call, asked))
      return measure !== undefined && isDefined(measure) && measure[name] !== undefined
    }
    default:
      return true
  }
}

function exceeds(call: DirectiveCall, name: 'above' | 'below', asked: string): boolean {
  const limit = Number(asked)
  if (asked.trim() === '' || Number.isNaN(limit)) {
    call.problem(`${name} needs a number, not '${asked}'`)
    return false
  }
  const number = comparable(comparedValue(call))
  return number !== undefined && (name === 'above' ? number > limit : number < limit)
}

function equals(value: unknown, asked: string): boolean {
  const number = comparable(value)
  if (number !== undefined) return asked.trim() !== '' && number === Number(asked)
  return typeof value === 'string' || typeof value === 'boolean' ? String(value) === asked : false
}

/** Whether two values would be read as the same: numbers as numbers, whether measured or stated. */
function isSame(one: unknown, other: unknown): boolean {
  const [first, second] = [comparable(one), comparable(other)]
  return first !== undefined && second !== undefined ? first === second : one === other
}

function isThere(value: unknown): boolean {
  const measure = asMeasure(value)
  return measure ? isDefined(measure) : value !== undefined && value !== null
}

function comparedValue(call: DirectiveCall): unknown {
  const path = call.attributes.path
  if (path !== undefined) return valueAt(call, path)
  call.problem('a comparison needs path=...')
  return undefined
}

/** The value, or undefined where this study leaves the name empty; a name that cannot be is a problem. */
function valueAt(call: DirectiveCall, path: string): unknown {
  const found = call.lookUp(path)
  if (found.status === 'found') return found.value
  if (found.status === 'unknown') call.problem(`unknown path '${path}'`, found.nearest)
  return undefined
}
