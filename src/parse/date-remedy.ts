import {isoDay} from '../model/day.ts'
import {monthNumber} from './month-names.ts'

/** Excel counts days from 1899-12-30; 20000 to 80000 covers 1954 to 2119. */
const serialEpoch = -25_569

const usual = 'write the day as 2026-05-31'

/** What is wrong with a cell that holds no day that can be read, and what to do about it. */
export function dateTrouble(text: string): {readonly message: string; readonly remedy: string} {
  const noDate = `\`${text}\` is not a date`
  const serial = serialDay(text)
  // A bare five-digit number is a day count very likely, not certainly, so it is only named.
  if (serial !== undefined)
    return {
      message: `\`${text}\` is a number; as a spreadsheet counts days it would be ${serial}`,
      remedy: 'format the column as a date in the spreadsheet and save it again'
    }
  if (/^(n\.?[\\/]?a\.?|-+|\?+|none|unknown|x+)$/i.test(text))
    return {message: noDate, remedy: 'leave the cell empty where the day is not known'}
  if (/^#/.test(text))
    return {
      message: noDate,
      remedy: 'the spreadsheet could not show this cell: widen the column or mend its formula, and save again'
    }
  if (/^\d{1,2}:\d{2}/.test(text)) return {message: `\`${text}\` is a time without a day`, remedy: usual}
  const words = text.split(/[\s.,/-]+/).filter((word) => word !== '')
  const isDayOfMonth = (word: string): boolean => /^\d{1,2}(st|nd|rd|th)?$/i.test(word)
  if (isRange(text))
    return {
      message: `\`${text}\` is more than one day`,
      remedy: 'give the first day a column of its own (`opened`) and the last day another (`collected`)'
    }
  const last = words.slice(-2)
  const isMonth = (word: string): boolean =>
    monthNumber(word) > 0 || (isDayOfMonth(word) && Number(word) <= 12)
  if (words.length <= 3 && last.some(isDayOfMonth) && last.some(isMonth) && !/\d{4}/.test(text))
    return {
      message: `\`${text}\` is a day without its year`,
      remedy: 'write the year too, as in 2026-05-31; in a spreadsheet choose a format that shows it'
    }
  if (
    words.length === 2 &&
    words.some((word) => monthNumber(word) > 0) &&
    words.some((word) => /^\d{4}$/.test(word))
  )
    return {message: `\`${text}\` is a month, not a day`, remedy: usual}
  return {message: noDate, remedy: usual}
}

/** `1-8 May 2026`, `18.5.-1.6.2026`, `4 May to 18 May`. */
function isRange(text: string): boolean {
  const day = String.raw`\d{1,2}(?:st|nd|rd|th)?\.?(?:[\s./-]*(?:\d{1,2}|\p{L}{1,9})\.?(?:[\s./-]*\d{2,4})?)?`
  if (/^\d{4}-\d{2}-\d{2}\s*(\/|to|[-\u2013])\s*\d{4}-\d{2}-\d{2}$/i.test(text)) return true
  return new RegExp(
    String.raw`^${day}\s*(?:[\u2013\u2014]|\s-\s|-(?=\d{1,2}\.?\s+\p{L})|-(?=\d{1,2}\.\d{1,2}\.)|\bto\b|\bbis\b|\bau\b|\ba\b|\buntil\b)\s*${day}$`,
    'iu'
  ).test(text)
}

function serialDay(text: string): string | undefined {
  const serial = Number(text)
  if (!/^\d{5}(\.\d+)?$/.test(text) || serial < 20_000 || serial > 80_000) return undefined
  return isoDay(serialEpoch + Math.floor(serial))
}
