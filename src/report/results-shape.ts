import resultsFile from '../model/results.schema.json' with {type: 'json'}
import studyFile from '../model/study.schema.json' with {type: 'json'}

/** A part of the JSON Schema of the results: tells a name that is never there from one that this study leaves empty. */
export interface Shape {
  readonly $ref?: string
  readonly properties?: Readonly<Record<string, Shape>>
  readonly items?: Shape | boolean
  readonly additionalProperties?: Shape | boolean
  readonly anyOf?: readonly Shape[]
  readonly $defs?: Readonly<Record<string, Shape>>
}

// Written from the descriptions that the code reads by, and held to them by a test: to make them anew takes longer
// than to compose most documents.
const {properties, $defs} = resultsFile as Shape
const stated = studyFile as Shape

/** The shape of everything that a template can call. `stated` has the shape of study.yaml. */
export const resultsShape: Shape = {
  ...resultsFile,
  properties: {...properties, stated},
  $defs: {...$defs, ...stated.$defs}
}

/** The shape behind a name (or an index, or an id) of a thing of this shape: undefined when the name cannot be there. */
export function shapeOf(shape: Shape | undefined, name: string): Shape | undefined {
  for (const alternative of alternatives(shape)) {
    const found = shapeWithin(alternative, name)
    if (found !== undefined) return found
  }
  return undefined
}

function shapeWithin(alternative: Shape, name: string): Shape | undefined {
  const {properties, items, additionalProperties} = alternative
  // An empty schema promises nothing and forbids nothing.
  if (Object.keys(alternative).length === 0) return alternative
  if (typeof items === 'object') return items
  const own = properties !== undefined && Object.hasOwn(properties, name) ? properties[name] : undefined
  return own ?? (typeof additionalProperties === 'object' ? additionalProperties : undefined)
}

const names = new WeakMap<Shape, readonly string[]>()

/** The names that a thing of this shape can have. A report asks thousands of times, of some hundred shapes. */
export function namesOf(shape: Shape | undefined): readonly string[] {
  if (shape === undefined) return []
  const known = names.get(shape)
  if (known !== undefined) return known
  const found = alternatives(shape).flatMap(({properties}) => Object.keys(properties ?? {}))
  names.set(shape, found)
  return found
}

function alternatives(shape: Shape | undefined): readonly Shape[] {
  if (shape === undefined) return []
  if (shape.$ref !== undefined) {
    return alternatives(resultsShape.$defs?.[shape.$ref.replace('#/$defs/', '')])
  }
  return shape.anyOf === undefined ? [shape] : shape.anyOf.flatMap(alternatives)
}
