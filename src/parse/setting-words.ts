import {listWords} from '../model/list-words.ts'
import {nearestName} from '../model/nearest-name.ts'
import type {YamlPath} from './read-yaml.ts'
import {alternatives, type SettingShape, settingShape} from './setting-shape.ts'

/** More names than these are no help. */
const mostNames = 4

/**
 * What is wrong with the value of a setting, and what belongs there, for people who know their beetles and no schema.
 *
 * @param said a sentence of the schema's own about this value, where it has one.
 */
export function settingWords(
  path: YamlPath,
  value: unknown,
  said?: string
): {readonly message: string; readonly remedy?: string} {
  const shape = settingShape(path)
  const forms = [...new Set(alternatives(shape).flatMap(formsOf))]
  const wanted = said ?? `it must be ${listWords(forms, 'or') || 'something else'}`
  const remedy = remedyFor(path, value, shape)
  return {
    message: `\`${path.join('.')}\` is ${valueWords(value)}; ${wanted}`,
    ...(remedy !== undefined && {remedy})
  }
}

function valueWords(value: unknown): string {
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object' && value !== null) return 'a block of lines'
  return `\`${String(value)}\``
}

function formsOf(shape: SettingShape): readonly string[] {
  const {type, properties} = shape
  if (shape.enum !== undefined) return shape.enum.map(quoted)
  if (shape.const !== undefined) return [quoted(shape.const)]
  switch (type) {
    case 'string':
      return ['text']
    case 'number':
    case 'integer':
      return [`a ${type === 'integer' ? 'whole ' : ''}number${boundsOf(shape)}`]
    case 'boolean':
      return ['`true`', '`false`']
    case 'array':
      return ['a list']
    default: {
      const names = Object.keys(properties ?? {})
      const some = names.slice(0, mostNames).map((name) => `\`${name}:\``)
      const more = names.length > mostNames ? ' and others' : ''
      return [names.length === 0 ? 'a block of names and values' : `a block with ${some.join(', ')}${more}`]
    }
  }
}

function quoted(value: unknown): string {
  return `\`${String(value)}\``
}

function boundsOf({minimum, maximum, exclusiveMinimum}: SettingShape): string {
  // A whole number has the bounds of what a computer can count to.
  const [least, most] = [minimum, maximum].map((bound) =>
    bound === undefined || Math.abs(bound) >= Number.MAX_SAFE_INTEGER ? undefined : bound
  )
  if (least !== undefined && most !== undefined) return ` from ${least} to ${most}`
  if (least !== undefined) return ` of at least ${least}`
  if (most !== undefined) return ` of at most ${most}`
  return exclusiveMinimum === undefined ? '' : ` above ${exclusiveMinimum}`
}

function remedyFor(path: YamlPath, value: unknown, shape: SettingShape): string | undefined {
  const choices = alternatives(shape)
  const words = choices.flatMap((choice) => [...(choice.enum ?? []), choice.const].filter(isText))
  const [, inner] =
    (isText(value) &&
      /^[\u201c\u201d\u201e\u2018\u2019\u00ab](.*)[\u201c\u201d\u2018\u2019\u00bb]$/.exec(value)) ||
    []
  if (inner !== undefined)
    return `these are printers' quotation marks, which are part of the text here: write \`${inner}\` without them`
  const near = typeof value === 'string' ? (meantBy(value, words) ?? nearestName(value, words)) : undefined
  if (near !== undefined) return `did you mean \`${near}\`?`
  const isNumber = choices.some(({type}) => type === 'number' || type === 'integer')
  const [, digits, unit] =
    (isNumber && isText(value) && /^(\d+(?:[.,]\d+)?)\s*(\p{L}+\.?)?$/u.exec(value)) || []
  if (digits !== undefined)
    return unit === undefined
      ? `write decimals with a point, \`${digits.replace(',', '.')}\``
      : `write the number alone, \`${digits.replace(',', '.')}\`: the name of the setting tells its unit`
  const [only] = choices
  if (only?.type === 'array' && !Array.isArray(value)) {
    const [first] = Object.keys(only.items?.properties ?? {})
    return `begin each entry with a hyphen, on a line of its own: \`- ${first === undefined ? '' : `${first}: `}${isText(value) ? value : '...'}\``
  }
  const isPlain = typeof value === 'number' || typeof value === 'boolean'
  if (isPlain && only?.type === 'string' && only.enum === undefined)
    return `put it in quotes, \`"${value}"\`, and it is text`
  const {description} = shape
  if (description !== undefined)
    return `what belongs there: ${description.charAt(0).toLowerCase()}${description.slice(1).replace(/\.$/, '')}`
  const names = Object.keys(only?.properties ?? {}).map((name) => `${name}: ...`)
  return names.length > 0 ? `write \`${path.at(-1)}: {${names.join(', ')}}\`` : undefined
}

/** What people call these things elsewhere. */
const otherNames: Readonly<Record<string, string>> = {
  ',': 'comma',
  '.': 'point',
  ansi: 'windows-1252',
  cp1252: 'windows-1252',
  latin1: 'windows-1252',
  iso88591: 'windows-1252',
  utf8: 'utf-8',
  utf16: 'utf-16le',
  unicode: 'utf-16le',
  ddmmyyyy: 'dmy',
  mmddyyyy: 'mdy',
  british: 'en-GB',
  american: 'en-US'
}

function meantBy(value: string, words: readonly string[]): string | undefined {
  const bare = value.toLowerCase().replace(/[^a-z0-9]/g, '')
  const other = otherNames[value] ?? otherNames[bare]
  if (other !== undefined && words.includes(other)) return other
  return words.find((word) => word.toLowerCase().replace(/[^a-z0-9]/g, '') === bare && bare !== '')
}

function isText(value: unknown): value is string {
  return typeof value === 'string'
}
