import {joinWords} from '../join-words.ts'
import {plainText} from '../plain-text.ts'

/** What a study states, in words: text on one line, a number as written, yes or no, a list in a row; undefined for anything else. */
export function statedWords(value: unknown): string | undefined {
  if (typeof value === 'string') return plainText(value)
  if (typeof value === 'number') return String(value).replace('-', '−')
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (!Array.isArray(value)) return undefined
  const parts = value.map(statedWords)
  return parts.includes(undefined) ? undefined : joinWords(parts, (separator) => separator).join('')
}
