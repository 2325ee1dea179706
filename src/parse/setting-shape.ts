import {z} from 'zod'
import {settingsSchema} from '../model/settings.ts'
import type {YamlPath} from './read-yaml.ts'

/** A part of the JSON Schema of study.yaml, as far as words are made of it. */
export interface SettingShape {
  readonly type?: string | readonly string[]
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly minimum?: number
  readonly maximum?: number
  readonly exclusiveMinimum?: number
  readonly description?: string
  readonly properties?: Readonly<Record<string, SettingShape>>
  readonly items?: SettingShape
  readonly additionalProperties?: SettingShape | boolean
  readonly anyOf?: readonly SettingShape[]
}

/** What may stand at a place of study.yaml; an empty shape where nothing is known of it. */
export function settingShape(path: YamlPath): SettingShape {
  return path.reduce<SettingShape>(
    (shape, name) =>
      alternatives(shape)
        .map(({properties, items, additionalProperties}) => {
          const own = properties?.[String(name)] ?? items
          return own ?? (typeof additionalProperties === 'object' ? additionalProperties : undefined)
        })
        .find((inner) => inner !== undefined) ?? {},
    z.toJSONSchema(settingsSchema, {io: 'input'}) as SettingShape
  )
}

/** The names of the settings that may stand below a place. */
export function namesWithin(path: YamlPath): readonly string[] {
  return alternatives(settingShape(path)).flatMap(({properties}) => Object.keys(properties ?? {}))
}

/** The shape itself, or those that it leaves the choice of. */
export function alternatives(shape: SettingShape): readonly SettingShape[] {
  const {anyOf, type} = shape
  if (anyOf !== undefined) return anyOf.flatMap(alternatives)
  return typeof type === 'object' ? type.map((one) => ({...shape, type: one})) : [shape]
}
