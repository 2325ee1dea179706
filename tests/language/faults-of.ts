import type {Results} from '../../src/model/results.ts'
import type {Assets} from '../../src/pipeline.ts'
import {numbersIn, printedNumbers} from '../printed-numbers.ts'
import {type Block, blocksOf, sentencesOf} from './blocks-of.ts'
import {hasVerb} from './verbs.ts'

/** Words and signs that no text may hold, whatever the study. */
const neverThere: readonly (readonly [what: string, pattern: RegExp])[] = [
  ['a value that is none', /\bNaN\b|\bundefined\b|\bnull\b(?! hypothesis)|\[object|\bInfinity\b/],
  ['a mark that nobody resolved', /\[[a-z][\w.-]*\?\]|:[a-z]+\[|\{\{|:::|\]\{/],
  ['empty brackets', /\(\s*\)|\[\s*\]|“\s*”|‘\s*’/],
  ['a space before a stop', /\s[,.;:!?](?=\s|$)/],
  ['a doubled stop', /[,;:]\s*[,.;:](?=\s|$)|(?<!\.)\.\.(?!\.)/],
  ['a doubled space', /\S {2,}\S/],
  ['a reason in the place of a number', /not defined (?!because|in|at|for|is)\p{Ll}/u],
  ['a space inside brackets', /\(\s|\s\)/],
  ['a word twice', /\b(and|of|the|in|to|a|was|were|is|are) \1\b/]
]

/** What is wrong with the text of a page, as lines to read; none where it reads well. */
export function faultsOf(page: string, known: KnownWords): readonly string[] {
  return blocksOf(page).flatMap((block) => [...signs(block, known), ...sentences(block, known)])
}

/** What is known of a study, against which its text is read. */
export interface KnownWords {
  /** Plural words of everything that is counted. */
  readonly plurals: ReadonlySet<string>
  /** Every number that may stand in a sentence. */
  readonly numbers: ReadonlySet<string>
  /** What the study itself says, in small letters. */
  readonly stated: readonly string[]
}

export function knownWords(
  results: Results,
  {templates, toolVersion}: Pick<Assets, 'templates' | 'toolVersion'>,
  texts: ReadonlyMap<string, string>
): KnownWords {
  const json = JSON.stringify(results)
  const days = [...json.matchAll(/(\d{4})-(\d{2})-(\d{2})/g)].flatMap(
    ([, year = '', month = '', day = '']) => [year, String(Number(month)), String(Number(day))]
  )
  return {
    plurals: new Set(
      [...json.matchAll(/"unit":\["([^"]*)","([^"]*)"\]/g)].flatMap(([, one, many]) =>
        many === undefined || one === many ? [] : [many]
      )
    ),
    numbers: new Set([
      ...[...printedNumbers(results).values()].flat(),
      ...[...templates.values(), ...texts.values()].flatMap(numbersIn),
      ...days,
      ...numbersIn(toolVersion)
    ]),
    stated: [
      ...stringsIn(results.stated),
      ...results.sites.flatMap(({name, management}) => [name, management ?? '']),
      ...texts.values()
    ].map((text) => text.toLowerCase())
  }
}

function signs({kind, text, prose}: Block, {plurals}: KnownWords): readonly string[] {
  const found = neverThere.flatMap(([what, pattern]) => (pattern.test(prose) ? [`${what}: ${text}`] : []))
  const [, one, noun] = /(?<![\d.,:])\b(1|[Oo]ne) ([a-z-]+)/.exec(text) ?? []
  if (noun !== undefined && plurals.has(noun)) found.push(`${one} ${noun}: ${text}`)
  if (kind !== 'cell' && text.trim() === '') found.push(`an empty ${kind}`)
  return found
}

function sentences({kind, prose}: Block, {numbers, stated}: KnownWords): readonly string[] {
  if (!['paragraph', 'item', 'caption'].includes(kind)) return []
  const found: string[] = []
  const unnumbered = prose.replace(/\b(Figures?|Tables?) \d+( and \d+|(, \d+)* and \d+)?/g, '')
  for (const number of numbersIn(unnumbered)) {
    if (!numbers.has(number)) found.push(`${number}, which is no result: ${prose}`)
  }
  if (/not defined \(/.test(prose)) found.push(`a sentence broken by a reason: ${prose}`)
  if (kind !== 'paragraph') return found
  if (!/[.!?:…][’”)]?$/.test(prose)) found.push(`no stop at the end: ${prose}`)
  for (const sentence of sentencesOf(prose)) {
    const own = sentence.toLowerCase().replace(/[.!?]$/, '')
    const isStated = stated.some(
      (words) => words !== '' && (words.includes(own) || own.includes(words.replace(/[.!?]$/, '')))
    )
    // Formulas and what leads to a list need no verb.
    const isWhole = isStated || sentence.includes('…') || sentence.endsWith(':') || hasVerb(sentence)
    if (!isWhole) found.push(`no verb: ${sentence}`)
    if (/^\p{Ll}/u.test(sentence)) found.push(`begins with a small letter: ${sentence}`)
  }
  return found
}

function stringsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value.trim()]
  if (typeof value === 'number') return []
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsIn) : []
}
