import {nearestName} from '../model/nearest-name.ts'
import type {Example} from '../rules/rule.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {type Explained, explainedCodes} from './explained-codes.ts'
import {severityInk} from './terminal/findings-text.ts'
import {groundLine} from './terminal/ground-line.ts'
import {indented, labelled} from './terminal/labelled.ts'
import {grouped} from './terminal/number-words.ts'
import {sentence} from './terminal/sentence.ts'
import type {Channel, Terminal} from './terminal/terminal.ts'
import {troubleText} from './terminal/trouble-text.ts'
import {visible} from './terminal/visible.ts'

/** `pitfolio explain CODE`: what a finding means, why it matters, how to mend it; without a code, all of them. */
export function explain(code: string | undefined, {out, err}: Terminal): ExitCode {
  if (code === undefined) {
    out.write(listText(out))
    return exitCode.clean
  }
  const found = explainedCodes.find((explained) => explained.code === code.toLowerCase())
  if (found !== undefined) {
    out.write(explanationText(out, found))
    return exitCode.clean
  }
  const meant = nearestName(
    code,
    explainedCodes.map((explained) => explained.code)
  )
  const remedy =
    meant === undefined
      ? '`pitfolio explain` lists every code'
      : `did you mean \`pitfolio explain ${meant}\`?`
  err.write(troubleText(err, {message: `no finding has the code ${code}`, remedy}))
  return exitCode.couldNotRun
}

function listText(channel: Channel): string {
  const headings = {
    error: 'error  the row, or the setting, is not used',
    caution: 'caution  used, but a reader should know',
    note: 'note  worth a look'
  } as const
  const blocks = (['error', 'caution', 'note'] as const).map((severity) => {
    const codes = explainedCodes.filter((explained) => explained.severity === severity)
    if (codes.length === 0) return ''
    const heading = groundLine(channel, grouped(codes.length), headings[severity], (words) =>
      words.replace(severity, (word) => channel.paint(severityInk[word as typeof severity], word))
    )
    const lines = codes.map(
      ({code, summary}) => `  ${channel.paint('bold', code)}\n${indented(channel, sentence(summary), 4)}`
    )
    return heading + lines.join('')
  })
  const next = 'pitfolio explain CODE says why it matters, how to mend it, and shows an example.\n'
  return [...blocks.filter((block) => block !== ''), next].join('\n')
}

function explanationText(
  channel: Channel,
  {code, severity, summary, why, remedy, source, examples}: Explained
): string {
  const heading = groundLine(
    channel,
    '',
    `${severity}  ${code}`,
    () => `${channel.paint(severityInk[severity], severity)}  ${channel.paint('bold', code)}`
  )
  return [
    heading,
    indented(channel, sentence(summary)),
    labelled(channel, 'mend', sentence(remedy), 2, 'green', 8),
    labelled(channel, 'why', sentence(why), 2, 'faint', 8),
    labelled(channel, 'source', sentence(source), 2, 'faint', 8),
    ...examples
      .filter(({files}) => Object.keys(files).length > 0)
      .map((example) => exampleText(channel, example, code))
  ].join('')
}

function exampleText(channel: Channel, {files, findings}: Example, code: string): string {
  const {paint} = channel
  const contents = Object.entries(files).map(([name, content]) => {
    const lines = content.replace(/\n$/, '').split('\n')
    return `\n  ${paint('faint', `an example ${name}`)}\n${lines.map((line) => `      ${visible(line)}\n`).join('')}`
  })
  const gives =
    findings.length === 0
      ? indented(channel, `gives no ${code}`)
      : `${indented(channel, 'gives')}${findings.map((finding) => indented(channel, visible(finding), 6)).join('')}`
  return contents.join('') + gives
}
