import type {Ink} from './paint.ts'
import type {Channel} from './terminal.ts'
import {padRight, wrapText} from './wrap-text.ts'

/** `  mend  What to do, in lines that hang below each other.` */
export function labelled(
  channel: Channel,
  label: string,
  text: string,
  indent = 2,
  ink: Ink = 'faint',
  labelWidth = 6
): string {
  const margin = ' '.repeat(indent)
  const lines = wrapText(text, channel.width - indent - labelWidth)
  return lines
    .map((line, index) =>
      `${margin}${index === 0 ? channel.paint(ink, padRight(label, labelWidth)) : ' '.repeat(labelWidth)}${line}`.trimEnd()
    )
    .map((line) => `${line}\n`)
    .join('')
}

/** Text in lines that all begin `indent` columns in. */
export function indented(channel: Channel, text: string, indent = 2): string {
  return wrapText(text, channel.width - indent)
    .map((line) => `${' '.repeat(indent)}${line}\n`)
    .join('')
}
