import {
  constructFromEvents,
  EVENT_ALIAS,
  EVENT_DOCUMENT,
  EVENT_MAPPING,
  EVENT_POP,
  EVENT_SCALAR,
  EVENT_SEQUENCE,
  getScalarValue,
  parseEvents,
  YAMLException
} from 'js-yaml'
import type {Place} from '../model/place.ts'
import {yamlTrouble} from './yaml-remedy.ts'

export type YamlPath = readonly (string | number)[]

export type YamlOutcome =
  | {
      readonly value: unknown
      readonly place: (path: YamlPath) => Place
      readonly keyPlace: (path: YamlPath) => Place
    }
  | {readonly place: Place; readonly message: string; readonly remedy: string}

interface Offsets {
  readonly key: number
  readonly value: number
}

/** YAML text to a plain value, with the place of every key and value. */
export function readYaml(file: string, text: string): YamlOutcome {
  try {
    const source = text.replace(/^\ufeff/, '')
    // No aliases: `&a [*a]` would load as a value without end.
    const events = parseEvents(source, {filename: file})
    const [value] = constructFromEvents(events, {source, filename: file, maxAliases: 0})
    const offsets = offsetsByPath(events, source)
    const place = (path: YamlPath, part: keyof Offsets): Place => {
      for (let length = path.length; length > 0; length--) {
        const found = offsets.get(pathKey(path.slice(0, length)))
        if (found) return placeAt(file, source, length === path.length ? found[part] : found.key)
      }
      return {file, line: 1}
    }
    return {value, place: (path) => place(path, 'value'), keyPlace: (path) => place(path, 'key')}
  } catch (error) {
    if (!(error instanceof Error)) throw error
    return troubleOf(file, text, error)
  }
}

function troubleOf(file: string, text: string, error: Error): YamlOutcome {
  const mark = error instanceof YAMLException ? error.mark : undefined
  const reason = error instanceof YAMLException ? error.reason : error.message
  const lines = text.split(/\r\n?|\n/)
  const at = mark === undefined || mark === null ? 0 : Math.min(mark.line, lines.length - 1)
  return {
    place: {file, ...(mark && {line: at + 1, column: mark.column + 1})},
    ...yamlTrouble(reason, lines, at)
  }
}

export function pathKey(path: YamlPath): string {
  return path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')
}

type Level =
  | {kind: 'map'; path: YamlPath; key: string | undefined; keyOffset: number}
  | {kind: 'list'; path: YamlPath; next: number}
  | {kind: 'document'}

/** Walk the events once, keeping the path at which each value stands. */
function offsetsByPath(events: ReturnType<typeof parseEvents>, source: string): ReadonlyMap<string, Offsets> {
  const offsets = new Map<string, Offsets>()
  const levels: Level[] = []
  const enter = (offset: number): YamlPath => {
    const level = levels.at(-1)
    if (level?.kind === 'map' && level.key !== undefined) {
      const path = [...level.path, level.key]
      offsets.set(pathKey(path), {key: level.keyOffset, value: offset < 0 ? level.keyOffset : offset})
      level.key = undefined
      return path
    }
    if (level?.kind === 'list') {
      const path = [...level.path, level.next++]
      offsets.set(pathKey(path), {key: offset, value: offset})
      return path
    }
    return []
  }
  for (const event of events) {
    const level = levels.at(-1)
    if (event.type === EVENT_DOCUMENT) levels.push({kind: 'document'})
    else if (event.type === EVENT_POP) levels.pop()
    else if (event.type === EVENT_MAPPING)
      levels.push({kind: 'map', path: enter(event.start), key: undefined, keyOffset: 0})
    else if (event.type === EVENT_SEQUENCE) levels.push({kind: 'list', path: enter(event.start), next: 0})
    else if (event.type === EVENT_SCALAR) {
      const quoted = event.valueStart > 0 && /["']/.test(source[event.valueStart - 1] ?? '')
      const offset = quoted ? event.valueStart - 1 : event.valueStart
      if (level?.kind === 'map' && level.key === undefined) {
        level.key = getScalarValue(source, event)
        level.keyOffset = offset
      } else {
        enter(offset)
      }
    } else if (event.type === EVENT_ALIAS) enter(event.anchorStart)
  }
  return offsets
}

function placeAt(file: string, source: string, offset: number): Place {
  const before = source.slice(0, Math.max(0, offset))
  const lines = before.split(/\r\n?|\n/)
  return {file, line: lines.length, column: (lines.at(-1) ?? '').length + 1}
}
