import type {RowBalance} from '../../model/finding.ts'
import {grouped} from './number-words.ts'
import type {Channel} from './terminal.ts'
import {visible} from './visible.ts'
import {padLeft, padRight, textWidth, wrapText} from './wrap-text.ts'

interface Column {
  readonly head: string
  readonly align: typeof padLeft
  readonly text: (row: RowBalance, all: readonly RowBalance[]) => string
}

const columns: readonly Column[] = [
  {head: 'table', align: padRight, text: nameOf},
  {head: 'read as', align: padRight, text: ({readAs}) => readAs},
  {head: 'rows', align: padLeft, text: ({read}) => grouped(read)},
  {head: 'used', align: padLeft, text: ({used}) => grouped(used)},
  {head: 'set aside', align: padLeft, text: ({setAside}) => grouped(setAside)}
]

/** The file; where one file serves several tables, which of them is meant. */
function nameOf({table, file}: RowBalance, all: readonly RowBalance[]): string {
  const isShared = all.some((other) => other.table !== table && other.file === file)
  return visible(isShared ? `${file}, ${table}` : file)
}

/** How most files are: it goes without saying. */
const usual = 'UTF-8, comma'

const gap = 2

/** What became of every row: one line for each table, and the reasons where rows were set aside. */
export function balanceText(channel: Channel, balance: readonly RowBalance[]): string {
  const isUsual = balance.every(({readAs}) => readAs === usual)
  const shown = columns.filter(({head}) => head !== 'read as' || !isUsual)
  const widths = shown.map(({head, text}) =>
    Math.max(head.length, ...balance.map((row) => textWidth(text(row, balance))))
  )
  const line = (cellOf: (column: Column) => string): string =>
    shown.map((column, index) => column.align(cellOf(column), widths[index] ?? 0)).join(' '.repeat(gap))
  const tableWidth = widths.reduce((sum, width) => sum + width + gap, -gap)
  return [
    `  ${channel.paint(
      'faint',
      line(({head}) => head)
    )}\n`,
    ...balance.map((row) => {
      const cells = line(({text}) => text(row, balance))
      const counts = row.setAside === 0 ? cells : cells.replace(/\S+$/, (last) => channel.paint('red', last))
      return `  ${counts}${reasonsText(channel, row, tableWidth)}\n`
    })
  ].join('')
}

/** The reasons beside the counts, or hanging below where there is no room. */
function reasonsText({width}: Channel, {byCode}: RowBalance, tableWidth: number): string {
  const reasons = Object.entries(byCode)
    .map(([code, count]) => `${code} ${grouped(count)}`)
    .join(', ')
  if (reasons === '') return ''
  const beside = width - tableWidth - 5
  if (textWidth(reasons) <= beside) return `   ${reasons}`
  return wrapText(reasons, width - 6)
    .map((text) => `\n      ${text}`)
    .join('')
}
