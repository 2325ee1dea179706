import {type Difference, tolerance, wholeEntry} from '../../archive-study.ts'
import {groundLine} from './ground-line.ts'
import {counted, grouped} from './number-words.ts'
import type {Channel} from './terminal.ts'
import {visible} from './visible.ts'
import {wrapText} from './wrap-text.ts'

/** What was looked at, whether it is as it should be, and what is to be said of it. */
export interface Section {
  readonly title: 'files' | 'numbers' | 'held back' | 'documents' | 'records'
  readonly ok: boolean
  /** Sentences; items of a list begin with a dash. */
  readonly lines: readonly string[]
}

/** Items of a list beyond these are counted. */
const shownItems = 10

export function accountText(
  channel: Channel,
  heading: string,
  sections: readonly Section[],
  verdict: string
): string {
  const {paint} = channel
  const parts = sections.map(({title, ok, lines}) => {
    const sign = ok ? 'ok' : 'no'
    const block = groundLine(channel, sign, title, (words) => paint(ok ? 'green' : 'red', words))
    return block + lines.map((line) => hanging(channel, line)).join('')
  })
  const sound = sections.every(({ok}) => ok)
  return [`${visible(heading)}\n`, ...parts, `${paint(sound ? 'green' : 'red', verdict)}\n`].join('\n')
}

function hanging({width}: Channel, line: string): string {
  const item = line.startsWith('- ')
  const [first = '', ...rest] = wrapText(visible(item ? line.slice(2) : line), width - 4)
  return [`  ${item ? '- ' : ''}${first}`, ...rest.map((more) => `  ${item ? '  ' : ''}${more}`)]
    .map((text) => `${text}\n`)
    .join('')
}

export function numbersSame(numbers: number): string {
  return `${grouped(numbers)} numbers computed again from the raw records, all the same (to 1 part in ${grouped(Math.round(1 / tolerance))}).`
}

/** Differences as items of a list, the first ones in full. */
export function comparisonLines(
  differences: readonly Difference[],
  where: string,
  again = 'computed again',
  most: number = shownItems
): readonly string[] {
  const items = differences.slice(0, most).map(({label, pointer, stored, recomputed}) => {
    const name = label === '' ? placeWords(pointer) : `${label}${detailOf(pointer)}`
    if (stored === wholeEntry) return `- ${name}: only ${where}`
    if (recomputed === wholeEntry)
      return `- ${name}: only ${again === 'computed again' ? 'when ' : ''}${again}`
    return `- ${name}: ${stored} ${where}, ${recomputed} ${again}`
  })
  const rest = differences.length - items.length
  return rest > 0 ? [...items, `- and ${grouped(rest)} more`] : items
}

/** `sites, K1, position, shown` for `/sites/K1/position/shown`. */
function placeWords(pointer: string): string {
  return pointer
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'))
    .join(', ')
}

/** What came of making the documents of a report again. */
export function documentsSection(
  documents: {readonly made: number; readonly differing: readonly string[]} | {readonly notMade: string}
): Section {
  const title = 'documents'
  if ('notMade' in documents) return {title, ok: true, lines: [`Not made again: ${documents.notMade}.`]}
  const {made, differing} = documents
  if (differing.length === 0)
    return {title, ok: true, lines: [`${counted(made, 'file')} made again, byte for byte the same.`]}
  const items = differing.slice(0, shownItems).map((words) => `- ${words}`)
  const rest = differing.length - items.length
  return {
    title,
    ok: false,
    lines: [
      `${counted(differing.length, 'file')} of the report come out differently:`,
      ...items,
      ...(rest > 0 ? [`- and ${grouped(rest)} more`] : [])
    ]
  }
}

/** ` (interval/low)`, where it is not the number itself. */
function detailOf(pointer: string): string {
  const [, detail] = /\/(interval\/\w+|standardError|caution|notDefined|share|rank)$/.exec(pointer) ?? []
  return detail === undefined ? '' : ` (${detail})`
}
