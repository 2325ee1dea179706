import {z} from 'zod'
import {resultsSchema} from '../model/results.ts'
import {settingsSchema} from '../model/settings.ts'

/** A part of the JSON Schema of the results: tells a name that is never there from one that this study leaves empty. */
export interface Shape {
  readonly $ref?: string
  readonly properties?: Readonly<Record<string, Shape>>
  readonly items?: Shape
  readonly additionalProperties?: Shape | boolean
  readonly anyOf?: readonly Shape[]
  readonly $defs?: Readonly<Record<string, Shape>>
}

let whole: Shape | undefined

/** The shape of everything that a template can call. `stated` has the shape of study.yaml. */
export function resultsShape(): Shape {
  if (whole === undefined) {
    const results = z.toJSONSchema(resultsSchema, {io: 'input'}) as Shape
    const stated = z.toJSONSchema(settingsSchema, {io: 'input'}) as Shape
    whole = {
      ...results,
      properties: {...results.properties, stated},
      $defs: {...results.$defs, ...stated.$defs}
    }
  }
  return whole
}

/** The shape behind a name (or an index, or an id) of a thing of this shape: undefined when the name cannot be there. */
export function shapeOf(shape: Shape | undefined, name: string): Shape | undefined {
  return alternatives(shape)
    .map((alternative) => {
      const {properties, items, additionalProperties} = alternative
      // An empty schema promises nothing and forbids nothing.
      if (Object.keys(alternative).length === 0) return alternative
      if (items !== undefined) return items
      const own = properties !== undefined && Object.hasOwn(properties, name) ? properties[name] : undefined
      if (own !== undefined) return own
      return typeof additionalProperties === 'object' ? additionalProperties : undefined
    })
    .find((found) => found !== undefined)
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
    return alternatives(resultsShape().$defs?.[shape.$ref.replace('#/$defs/', '')])
  }
  return shape.anyOf === undefined ? [shape] : shape.anyOf.flatMap(alternatives)
}
