import type {z} from 'zod'
import {nearestName} from '../model/nearest-name.ts'
import {type Settings, settingsSchema} from '../model/settings.ts'
import type {Problem} from '../model/study.ts'
import {readYaml, type YamlOutcome, type YamlPath} from './read-yaml.ts'
import {namesWithin} from './setting-shape.ts'
import {settingWords} from './setting-words.ts'

export type SettingsOutcome =
  | {
      readonly settings: Settings
      readonly problems: readonly Problem[]
      readonly place: (path: YamlPath, part?: 'key' | 'value') => Problem['place']
    }
  | {readonly unreadable: readonly Problem[]}

/**
 * study.yaml to settings. A setting that is wrong is named with its place and left out, so that one slip in one
 * line does not keep the whole study from being read.
 */
export function readSettings(file: string, text: string): SettingsOutcome {
  if (text.trim() === '' || text.split('\n').every((line) => /^\s*(#|$)/.test(line))) {
    return {settings: {}, problems: [], place: () => ({file, line: 1})}
  }
  const yaml = readYaml(file, text)
  if (!('value' in yaml)) {
    const {place, message, remedy} = yaml
    return {unreadable: [{code: 'invalid-setting', place, message, remedy, setsAside: false}]}
  }
  if (yaml.value === null) return {settings: {}, problems: [], place: placeOf(yaml)}
  if (typeof yaml.value !== 'object' || Array.isArray(yaml.value)) {
    const place = {file, line: 1}
    const slip = /^(\s*)([a-z_]+):(\S.*)$/m.exec(text)
    const remedy =
      slip === null
        ? 'write lines such as `title: Ground beetles of the Brennel valley`'
        : `put a space behind each colon: \`${slip[2]}: ${slip[3]}\``
    return {
      unreadable: [
        {
          code: 'invalid-setting',
          place,
          message: 'study.yaml must hold `name: value` lines',
          remedy,
          setsAside: false
        }
      ]
    }
  }
  return validate(yaml.value, yaml)
}

function validate(written: object, yaml: Extract<YamlOutcome, {value: unknown}>): SettingsOutcome {
  const problems: Problem[] = emptyUnknown(written, yaml)
  // `key:` with nothing behind it is how people leave a line for later: the same as no line at all.
  let value: unknown = withoutEmpty(written)
  for (let round = 0; round < 100; round++) {
    const outcome = settingsSchema.safeParse(value)
    if (outcome.success) return {settings: outcome.data, problems, place: placeOf(yaml)}
    for (const issue of outcome.error.issues) {
      for (const {path, problem} of settingProblems(issue, yaml, value)) {
        problems.push(problem)
        value = withoutPath(value, path)
      }
    }
  }
  return {settings: {}, problems, place: placeOf(yaml)}
}

function placeOf(
  yaml: Extract<YamlOutcome, {value: unknown}>
): (path: YamlPath, part?: 'key' | 'value') => Problem['place'] {
  return (path, part) => (part === 'key' ? yaml.keyPlace(path) : yaml.place(path))
}

function settingProblems(
  issue: z.core.$ZodIssue,
  yaml: Extract<YamlOutcome, {value: unknown}>,
  value: unknown
): readonly {path: YamlPath; problem: Problem}[] {
  const path = issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part))
  if (issue.code !== 'unrecognized_keys') {
    const words = settingWords(path, valueAt(value, path), ownWords(issue))
    const place = placeOf(yaml)(path)
    return [{path, problem: {code: 'invalid-setting', place, ...words, setsAside: false}}]
  }
  return issue.keys.map((key) => {
    const meant = nearestName(key, namesWithin(path))
    const full = [...path, key]
    const hard = /^[\u00a0\u2002-\u200a\u202f\u3000]/.test(key)
    const problem: Problem = {
      code: 'unknown-setting',
      place: yaml.keyPlace(full),
      message: hard
        ? `\`${full.join('.').trim()}\` is indented with hard spaces, as word processors and web pages have them; it is ignored`
        : `\`${full.join('.')}\` is not a setting; it is ignored`,
      ...(meant !== undefined && {remedy: `did you mean \`${meant}\`?`}),
      ...(hard && {remedy: 'delete what stands before the name and type spaces'}),
      setsAside: false
    }
    return {path: full, problem}
  })
}

/** A sentence that our schema has for this value; zod's own speak of strings, records and arrays. */
function ownWords({code, message}: z.core.$ZodIssue): string | undefined {
  return code === 'invalid_format' || code === 'custom' || code === 'invalid_key' ? message : undefined
}

function valueAt(value: unknown, path: YamlPath): unknown {
  return path.reduce<unknown>((inner, name) => Object(inner)[name], value)
}

/**
 * Names with nothing behind them that are no settings: in braces a decimal comma makes such a name of the decimals,
 * `{rim_diameter_mm: 7,5}`.
 */
function emptyUnknown(written: object, yaml: Extract<YamlOutcome, {value: unknown}>): Problem[] {
  const issues = settingsSchema.safeParse(written).error?.issues ?? []
  return issues
    .flatMap((issue) => (issue.code === 'unrecognized_keys' ? settingProblems(issue, yaml, written) : []))
    .filter(({path}) => valueAt(written, path) === null)
    .map(({problem}) => problem)
}

function withoutEmpty(value: unknown): unknown {
  if (Array.isArray(value)) return value.filter((item) => item !== null).map(withoutEmpty)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, item]) => item !== null)
      .map(([key, item]) => [key, withoutEmpty(item)])
  )
}

function withoutPath(value: unknown, path: YamlPath): unknown {
  const [first, ...rest] = path
  if (first === undefined) return undefined
  if (Array.isArray(value)) {
    return rest.length === 0
      ? value.filter((_, index) => index !== first)
      : value.map((item, index) => (index === first ? withoutPath(item, rest) : item))
  }
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, item]) => {
      if (key !== String(first)) return [[key, item] as const]
      return rest.length === 0 ? [] : [[key, withoutPath(item, rest)] as const]
    })
  )
}
