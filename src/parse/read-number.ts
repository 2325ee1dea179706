import {countRemedy} from './number-remedy.ts'

export type DecimalMark = 'point' | 'comma' | undefined

/** What a cell says, or why it cannot be said. */
export type CellReading<T> =
  | {readonly value: T}
  | {
      readonly code: 'ambiguous-number' | 'unreadable-number' | 'count-not-whole'
      readonly message: string
      readonly remedy?: string
    }

/**
 * A number as people write it: `12`, `-3.5`, `12,5`, `1 234`, `1.234,5`, `1,234.5`.
 *
 * One mark followed by three digits (`1.234`, `1,234`) may be a decimal or a thousands mark: it is read only
 * when the study says which (`decimal:`), or when nobody would group so (`0.125`, `0,125`).
 */
export function readNumber(text: string, decimal: DecimalMark): CellReading<number> {
  const compact = text
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/(?<=\d)[\s\u00a0\u202f'\u2019](?=\d{3}(?!\d))/g, '')
  if (/^[+-]?\d+$/.test(compact)) return {value: Number(compact)}
  if (/^[+-]?\d*[.,]?\d+(?:e[+-]?\d+)?$/i.test(compact)) return readSingleMark(compact, text, decimal)
  const pointDecimal = /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(compact)
  const commaDecimal = /^[+-]?\d{1,3}(?:\.\d{3})+(?:,\d+)?$/.test(compact)
  if (pointDecimal && decimal !== 'comma') return {value: Number(compact.replaceAll(',', ''))}
  if (commaDecimal && decimal !== 'point')
    return {value: Number(compact.replaceAll('.', '').replace(',', '.'))}
  return {code: 'unreadable-number', message: `\`${text}\` is not a number`}
}

function readSingleMark(compact: string, text: string, decimal: DecimalMark): CellReading<number> {
  const mark = compact.includes(',') ? 'comma' : 'point'
  const asDecimal = Number(compact.replace(',', '.'))
  const mayBeThousands = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/.test(compact)
  if (!mayBeThousands || decimal === mark) {
    // A study that writes decimal commas does not mean 12.5 when it writes 12.5, but nothing else can be meant.
    return {value: asDecimal}
  }
  if (decimal !== undefined) return {value: Number(compact.replace(/[.,]/, ''))}
  const asThousands = compact.replace(/[.,]/, '')
  return {
    code: 'ambiguous-number',
    message: `\`${text}\` may be ${compact.replace(',', '.')} or ${asThousands}`
  }
}

/**
 * A count: a whole number, 0 or more. Beyond plain digits only `1 234` and `12.0` are certain; `c. 30`, `>100`,
 * `12*` and `x` are not numbers of animals that anybody could add up.
 */
export function readCount(text: string, decimal: DecimalMark): CellReading<number> {
  if (/^\d{1,9}$/.test(text)) return {value: Number(text)}
  const reading = readNumber(text, decimal)
  if ('code' in reading) {
    return reading.code === 'ambiguous-number'
      ? reading
      : notWhole(text, `\`${text}\` is not a whole number of individuals`)
  }
  const {value} = reading
  if (Number.isSafeInteger(value) && value >= 0) return reading
  return notWhole(text, `\`${text}\` is not a whole number, 0 or more`)
}

function notWhole(text: string, message: string): CellReading<number> {
  const remedy = countRemedy(text)
  return {code: 'count-not-whole', message, ...(remedy !== undefined && {remedy})}
}
