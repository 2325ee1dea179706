import type {Channel} from './terminal.ts'
import {textWidth} from './wrap-text.ts'

/**
 * The heading of a block: the soil surface with a cup sunk flush into it, and in the cup what it holds.
 *
 *     ──┐ 217 ┌── caution  ambiguous-date ───────────────────
 */
export function groundLine(
  channel: Channel,
  inCup: string,
  title: string,
  paintTitle: (title: string) => string
): string {
  const {draws, width, paint} = channel
  const soil = draws ? '─' : '-'
  const [left, right] = draws ? ['┐', '┌'] : ['|', '|']
  const cup = inCup === '' ? '' : `${left} ${inCup} ${right}`
  const start = `${soil}${soil}${cup}${soil}${soil}`
  const rest = Math.max(0, width - textWidth(start) - textWidth(title) - 2)
  const cupPainted = inCup === '' ? '' : `${left} ${paint('bold', inCup)} ${right}`
  return (
    `${soil}${soil}${cupPainted}${soil}${soil} ${paintTitle(title)} ${paint('faint', soil.repeat(rest))}`.trimEnd() +
    '\n'
  )
}
