import type {RowBalance} from '../../model/finding.ts'
import {grouped} from './number-words.ts'
import type {Channel} from './terminal.ts'
import {visible} from './visible.ts'
import {padLeft, padRight, textWidth, wrapText} from './wrap-text.ts'

const heads = ['table', 'rows', 'used', 'set aside'] as const

/** What became of every row: one line for each table, and the reasons where rows were set aside. */
export function balanceText(channel: Channel, balance: readonly RowBalance[]): string {
  const rows = balance.map(({file, read, used, setAside, byCode}) => ({
    cells: [visible(file), grouped(read), grouped(used), grouped(setAside)],
    reasons: Object.entries(byCode)
      .map(([code, count]) => `${code} ${grouped(count)}`)
      .join(', '),
    isWhole: setAside === 0
  }))
  const widths = heads.map((head, index) =>
    Math.max(head.length, ...rows.map(({cells}) => textWidth(cells[index] ?? '')))
  )
  const line = (cells: readonly string[]): string =>
    cells.map((cell, index) => (index === 0 ? padRight : padLeft)(cell, widths[index] ?? 0)).join('  ')
  const tableWidth = widths.reduce((sum, width) => sum + width, 0) + 6
  return [
    `  ${channel.paint('faint', line(heads))}\n`,
    ...rows.map(({cells, reasons, isWhole}) => {
      const counts = isWhole ? line(cells) : line(cells).replace(/\S+$/, (last) => channel.paint('red', last))
      return `  ${counts}${reasonsText(channel, reasons, tableWidth)}\n`
    })
  ].join('')
}

/** The reasons beside the counts, or hanging below where there is no room. */
function reasonsText({width}: Channel, reasons: string, tableWidth: number): string {
  if (reasons === '') return ''
  const beside = width - tableWidth - 5
  if (textWidth(reasons) <= beside) return `   ${reasons}`
  return wrapText(reasons, width - 6)
    .map((line) => `\n      ${line}`)
    .join('')
}
