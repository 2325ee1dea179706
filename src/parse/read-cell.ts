import type {Column} from '../model/column.ts'
import {nearestName} from '../model/nearest-name.ts'
import type {ProblemCode} from '../model/study.ts'
import {numberRemedy, saysNothing} from './number-remedy.ts'
import {type DateOrder, readMoment} from './read-moment.ts'
import {type DecimalMark, readCount, readNumber} from './read-number.ts'
import {perhaps, sameWords} from './same-words.ts'
import {isTotal} from './totals.ts'
import {yamlText} from './yaml-text.ts'

/** How a study writes its dates and numbers, and the words it has added. */
export interface CellConventions {
  readonly order: DateOrder
  readonly decimal: DecimalMark
  /** Condition words of the study's own. */
  readonly conditions: readonly string[]
  /** Translations of the study's own codes, by column. */
  readonly words: Readonly<Record<string, Readonly<Record<string, string | number>>>>
}

export type CellOutcome = {readonly value: unknown} | CellTrouble

export interface CellTrouble {
  readonly code: ProblemCode
  readonly message: string
  readonly remedy?: string
}

/** Turn the text of one cell into the value that its column promises. The text is trimmed and not empty. */
export function readCell(text: string, column: Column, conventions: CellConventions): CellOutcome {
  if (namesRows(column) && isTotal(text))
    return {code: 'totals-row', message: `\`${text}\` heads a row of sums`}
  switch (column.kind) {
    case 'id':
    case 'text':
      return {value: text}
    case 'word':
      return readWord(text, column, conventions)
    case 'count':
      return column.name === 'count'
        ? readCount(text, conventions.decimal)
        : readWholeNumber(text, column, conventions.decimal)
    case 'number':
      return readMeasure(text, column, conventions.decimal)
    case 'fraction':
      return readFraction(text, conventions.decimal)
    case 'latitude':
      return readDegrees(text, conventions.decimal, 90, 'a latitude', 'NS')
    case 'longitude':
      return readDegrees(text, conventions.decimal, 180, 'a longitude', 'EW')
    case 'moment':
      return readMoment(text, conventions.order)
    case 'day': {
      const reading = readMoment(text, conventions.order)
      return 'value' in reading ? {value: reading.value.day} : reading
    }
  }
}

/** Columns that say whose row it is, or of what day: there a word such as `Total` is no name. */
function namesRows({name, kind, required}: Column): boolean {
  return (kind === 'id' || kind === 'day' || kind === 'moment') && (required === true || name === 'site_id')
}

function readWord(text: string, column: Column, conventions: CellConventions): CellOutcome {
  const own = column.ownWords ? conventions.conditions : []
  const words = [...(column.words ?? []), ...own]
  const wanted = text.toLowerCase()
  const known =
    words.find((word) => word.toLowerCase() === wanted) ??
    words.find((word) => `${word.toLowerCase()}s` === wanted) ??
    ownProperty(sameWords[column.name], wanted.replace(/\.$/, ''))
  if (known !== undefined) return {value: column.isNumber ? Number(known) : known}
  const meant = ownProperty(perhaps[column.name], wanted.replace(/[.!?]+$/, '')) ?? nearestName(text, words)
  return {
    code: column.name === 'condition' ? 'unknown-condition' : 'unknown-word',
    message: `\`${text}\` is not a word for ${column.name}; known are ${words.join(', ')}`,
    remedy: wordRemedy(text, column.name, meant)
  }
}

function wordRemedy(text: string, column: string, meant: string | undefined): string {
  const line = (word: string): string =>
    `\`${column}: {${yamlText(text)}: ${word}}\` in study.yaml, below \`words:\` and two spaces in`
  if (meant !== undefined) return `did you mean \`${meant}\`? Correct it, or write ${line(meant)}`
  return saysNothing(text)
    ? `leave the cell empty, or write ${line('""')}`
    : `use one of the known words, or say once which of them it stands for: ${line('...')}`
}

function ownProperty(words: Readonly<Record<string, string>> | undefined, name: string): string | undefined {
  return words !== undefined && Object.hasOwn(words, name) ? words[name] : undefined
}

/** A measure in the unit of its column, which may stand behind it: `85 %`, `180 m`. */
function readMeasure(text: string, {name, unit}: Column, decimal: DecimalMark): CellOutcome {
  const own = unit !== undefined && text.endsWith(unit) ? text.slice(0, -unit.length).trim() : text
  const reading = readNumber(own, decimal)
  if ('value' in reading || reading.code !== 'unreadable-number') return reading
  const remedy = numberRemedy(text, name, unit)
  return {...reading, message: `\`${text}\` is not a number`, ...(remedy !== undefined && {remedy})}
}

/** A number of something else than animals of the catch. */
function readWholeNumber(text: string, {name}: Column, decimal: DecimalMark): CellOutcome {
  const reading = readCount(text, decimal)
  if ('value' in reading || reading.code !== 'count-not-whole') return reading
  return {
    code: 'unreadable-number',
    message: `\`${text}\` is not a whole number, 0 or more`,
    remedy: numberRemedy(text, name) ?? 'write plain digits'
  }
}

function readFraction(text: string, decimal: DecimalMark): CellOutcome {
  const slash = /^(\d+)\s*\/\s*(\d+)$/.exec(text)
  const percent = /^([\d.,]+)\s*%$/.exec(text)
  const reading = slash
    ? {value: Number(slash[1]) / Number(slash[2])}
    : percent
      ? scaled(readNumber(percent[1] ?? '', decimal))
      : readNumber(text, decimal)
  if ('code' in reading) return reading
  if (reading.value > 0 && reading.value <= 1) return reading
  return {
    code: 'unreadable-number',
    message: `\`${text}\` is not a part of a sample: above 0 and up to 1 is possible`
  }
}

function scaled(reading: ReturnType<typeof readNumber>): ReturnType<typeof readNumber> {
  return 'value' in reading ? {value: reading.value / 100} : reading
}

/** The cell is not repeated in the message: findings are read by others, and a mistyped place is still nearly the place. */
function readDegrees(
  text: string,
  decimal: DecimalMark,
  limit: number,
  what: string,
  letters: string
): CellOutcome {
  const [, before = '', digits = text, after = ''] =
    /^([NSEW]?)\s*([+\-\u2212]?[\d.,]+)\s*[°\u00ba]?\s*([NSEW]?)$/i.exec(text) ?? []
  // Thousands of degrees do not exist, so `38.895` is certain here where a plain number would be ambiguous.
  const reading = readNumber(digits, decimal ?? (digits.includes(',') ? 'comma' : 'point'))
  const letter = (before || after).toUpperCase()
  if ('code' in reading || (letter !== '' && !letters.includes(letter))) {
    return {
      code: 'unreadable-number',
      message: `this is not ${what} in decimal degrees`,
      remedy: /\d\s*[°\u00ba]\s*\d/.test(text)
        ? 'work degrees, minutes and seconds into one number: degrees + minutes / 60 + seconds / 3600, as in 51.2344, with a minus for south and west'
        : 'write degrees with decimals, as in 51.2344, with a minus for south and west'
    }
  }
  const value = letter === 'S' || letter === 'W' ? -reading.value : reading.value
  if (Math.abs(value) <= limit) return {value}
  return {
    code: 'coordinate-off-the-map',
    message: `this is not ${what}: -${limit} to ${limit} degrees is possible`,
    remedy: 'check the digits, and whether latitude and longitude changed places'
  }
}
