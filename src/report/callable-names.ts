import {isDefined, type Measure} from '../model/quantity.ts'
import {asMeasure} from './as-measure.ts'
import {statedWords} from './directives/stated-words.ts'
import {formatAmount, formatInterval} from './format-measure.ts'
import {namesOf, resultsShape, type Shape, shapeOf} from './results-shape.ts'

/** A name that a template or a text can call. */
export interface CallableName {
  readonly path: string
  /** What stands there now, as it is printed; undefined where this study has nothing. */
  readonly value?: string
  /** The directives that print it. */
  readonly directives: string
  readonly meaning?: string
}

/** What is told of a site to its owner alone: it can be called, and its value is in no document for others. */
const forTheOwner = /^sites\.[^.]+\.locality(\.|$)/

/** Longer texts are cut. */
const mostLetters = 80

/** Longer lists of plain values are counted, not written out. */
const mostWritten = 8

/**
 * Every name of the results with what stands there: short names first, what was computed before what was stated.
 * Things in lists are entered by their id, or by number where they have none of their own. Of a list of numbered
 * things that make up a curve, only the first is spelt out.
 */
export function callableNames(results: unknown): readonly CallableName[] {
  const names: CallableName[] = []
  walk('', results, resultsShape, names)
  const rank = ({path}: CallableName) => dotsIn(path) * 2 + (path.startsWith('stated') ? 1 : 0)
  // There are thousands of them: each is ranked once.
  return names
    .map((name) => ({name: shown(name), rank: rank(name)}))
    .sort((one, other) => one.rank - other.rank)
    .map(({name}) => name)
}

function dotsIn(path: string): number {
  let dots = 0
  for (let at = path.indexOf('.'); at !== -1; at = path.indexOf('.', at + 1)) dots++
  return dots
}

function shown(name: CallableName): CallableName {
  const {path, value, ...rest} = name
  if (value === undefined) return name
  if (forTheOwner.test(path)) return {path, value: 'for the site report alone', ...rest}
  return value.length > mostLetters
    ? {path, value: `${value.slice(0, mostLetters).trimEnd()} …`, ...rest}
    : name
}

function walk(path: string, value: unknown, shape: Shape | undefined, names: CallableName[]): void {
  const measure = asMeasure(value)
  if (measure !== undefined) names.push(ofMeasure(path, measure))
  else if (Array.isArray(value)) list(path, value, shape, names)
  else if (typeof value === 'object' && value !== null) {
    for (const [name, inner] of Object.entries(value)) {
      // A name with a dot in it would be read as two.
      if (name.includes('.')) continue
      const place = path === '' ? name : `${path}.${name}`
      if (inner === undefined || inner === null) names.push({path: place, directives: 'given'})
      else walk(place, inner, shapeOf(shape, name), names)
    }
    for (const name of namesOf(shape)) {
      if (!Object.hasOwn(value, name))
        names.push({path: path === '' ? name : `${path}.${name}`, directives: 'given'})
    }
  } else {
    const words = statedWords(value)
    names.push({path, ...(words !== undefined && {value: words}), directives: plainDirectives(value)})
  }
}

function ofMeasure(path: string, measure: Measure): CallableName {
  const interval = formatInterval(measure)
  const value = formatAmount(measure)
  const directives = [
    'amount, value',
    ...(interval === undefined ? [] : ['interval, method']),
    ...(isDefined(measure) ? (measure.caution === undefined ? [] : ['caution']) : ['why'])
  ].join(', ')
  return {
    path,
    value: interval === undefined ? value : `${value} (${interval})`,
    directives,
    meaning: measure.label
  }
}

function list(
  path: string,
  items: readonly unknown[],
  shape: Shape | undefined,
  names: CallableName[]
): void {
  const isPlain = items.every((item) => typeof item !== 'object' || item === null)
  if (isPlain) {
    const words = items.length <= mostWritten ? statedWords(items) : `${items.length} values`
    names.push({path, ...(words && {value: words}), directives: 'list, each'})
    return
  }
  names.push({path, value: `list of ${items.length}`, directives: 'each'})
  const entered = new Set<string>()
  for (const [index, item] of items.entries()) {
    const own = idOf(item)
    // An id leads to the first thing that bears it.
    const id = own !== undefined && entered.has(own) ? undefined : own
    if (id !== undefined) entered.add(id)
    // Points of a curve differ in nothing but their numbers.
    if (id === undefined && index > 0 && /\.(points|asymptotic)$/.test(path)) return
    walk(`${path}.${id ?? index}`, item, shapeOf(shape, String(index)), names)
  }
}

function idOf(item: unknown): string | undefined {
  if (typeof item !== 'object' || item === null || !('id' in item)) return undefined
  return typeof item.id === 'string' && item.id !== '' && !item.id.includes('.') ? item.id : undefined
}

function plainDirectives(value: unknown): string {
  if (typeof value === 'number') return 'value, text'
  if (typeof value === 'boolean') return 'given, text'
  return typeof value === 'string' && /^\d{4}-\d\d-\d\d(T|$)/.test(value)
    ? 'date, dates, text'
    : 'text, sentence'
}
