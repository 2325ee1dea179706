import {labelled} from './labelled.ts'
import {sentence} from './sentence.ts'
import type {Channel} from './terminal.ts'
import {visible} from './visible.ts'
import {wrapText} from './wrap-text.ts'

/** Files beyond these are counted. */
const shownFiles = 10

export interface Trouble {
  readonly message: string
  readonly remedy: string
  readonly files?: readonly string[]
}

/** Why a command could not do its work, and what to do about it. */
export function troubleText(channel: Channel, {message, remedy, files = []}: Trouble): string {
  const rest = files.length - shownFiles
  return [
    `${wrapText(`pitfolio: ${visible(message)}`, channel.width).join('\n  ')}\n`,
    ...files.slice(0, shownFiles).map((file) => `    ${visible(file)}\n`),
    rest > 0 ? `    ... and ${rest} more\n` : '',
    labelled(channel, 'mend', visible(sentence(remedy)), 2, 'green')
  ].join('')
}

/** An error that is no trouble of the user's: what to tell us, and nothing of the code unless it is asked for. */
export function faultText(channel: Channel, error: unknown, version: string, debug: boolean): string {
  const message = error instanceof Error ? error.message : String(error)
  const stack = error instanceof Error ? (error.stack ?? message) : message
  return [
    `pitfolio: this is a fault in pitfolio, not in your data: ${visible(message)}\n`,
    labelled(
      channel,
      'tell',
      'Please report it to those who look after pitfolio, with your command and, if you may, the study folder.',
      2,
      'green'
    ),
    labelled(
      channel,
      'say',
      `pitfolio ${version}, Node.js ${process.version}, ${process.platform} ${process.arch}`
    ),
    debug
      ? `${stack.split('\n').map(visible).join('\n')}\n`
      : labelled(channel, 'see', 'PITFOLIO_DEBUG=1 before the command shows where it happened.')
  ].join('')
}
