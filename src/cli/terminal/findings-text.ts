import type {Finding, Severity} from '../../model/finding.ts'
import {formatPlace} from '../../model/place.ts'
import {type FindingGroup, findingGroups} from './finding-groups.ts'
import {groundLine} from './ground-line.ts'
import {indented, labelled} from './labelled.ts'
import {grouped} from './number-words.ts'
import type {Ink} from './paint.ts'
import {sentence} from './sentence.ts'
import type {Channel} from './terminal.ts'
import {visible} from './visible.ts'
import {padRight, textWidth, wrapText} from './wrap-text.ts'

/** Places of one slip that are worth seeing at once; the rest is counted. */
const shownPlaces = 5

export const severityInk: Readonly<Record<Severity, Ink>> = {error: 'red', caution: 'yellow', note: 'cyan'}

export interface FindingsWords {
  /** What a code means, by code, in the order in which a person mends a folder. */
  readonly summaries: ReadonlyMap<string, string>
  /** The command that shows every place. */
  readonly showAll: string
}

/** Findings as a person reads them: one block for each code, what is most urgent first. */
export function findingsText(channel: Channel, findings: readonly Finding[], words: FindingsWords): string {
  return findingGroups(findings, [...words.summaries.keys()])
    .map((group) => groupText(channel, group, words))
    .join('\n')
}

function groupText(channel: Channel, group: FindingGroup, {summaries, showAll}: FindingsWords): string {
  const {code, severity, findings, remedy, why} = group
  const heading = groundLine(
    channel,
    grouped(findings.length),
    `${severity}  ${code}`,
    () => `${channel.paint(severityInk[severity], severity)}  ${channel.paint('bold', code)}`
  )
  const message = sharedMessage(findings)
  const what = message ?? (findings.length > 1 ? summaries.get(code) : undefined)
  const shown = placesToShow(findings)
  const rest = new Set(findings.map(lineOf)).size - shown.length
  return [
    heading,
    what === undefined ? '' : indented(channel, visible(sentence(what))),
    placesText(channel, shown, message === undefined, remedy === undefined),
    rest === 0 ? '' : indented(channel, `... and ${grouped(rest)} more; ${showAll} lists them all`),
    remedy === undefined ? '' : labelled(channel, 'mend', visible(sentence(remedy)), 2, 'green'),
    why === undefined ? '' : labelled(channel, 'why', visible(sentence(why)))
  ].join('')
}

/**
 * The places that are shown, each once: the first ones; where remedies differ, the first ones of each in turn.
 */
function placesToShow(findings: readonly Finding[]): readonly Finding[] {
  const byRemedy = new Map<string, Map<string, Finding>>()
  for (const finding of findings) {
    const alike = byRemedy.get(finding.remedy) ?? new Map<string, Finding>()
    byRemedy.set(finding.remedy, alike)
    if (!alike.has(lineOf(finding))) alike.set(lineOf(finding), finding)
  }
  return [...byRemedy.values()]
    .flatMap((alike, kind) => [...alike.values()].map((finding, rank) => ({finding, kind, rank})))
    .sort((a, b) => a.rank - b.rank)
    .slice(0, shownPlaces)
    .sort((a, b) => a.kind - b.kind || a.rank - b.rank)
    .map(({finding}) => finding)
}

/** What is seen of a finding: two tables of one file may have the same to say of one cell. */
function lineOf({place, message, cell}: Finding): string {
  return JSON.stringify([place.file, place.line, place.column, message, cell])
}

/** The message, where many findings have the same. */
function sharedMessage(findings: readonly Finding[]): string | undefined {
  const [first] = findings
  return findings.length > 1 && findings.every(({message}) => message === first?.message)
    ? first?.message
    : undefined
}

function placesText(
  channel: Channel,
  findings: readonly Finding[],
  withMessage: boolean,
  withRemedy: boolean
): string {
  const places = findings.map(({place}) => visible(formatPlace(place)))
  const placeWidth = Math.max(...places.map(textWidth))
  return findings
    .map((finding, index) => {
      const place = places[index] ?? ''
      const said = [withMessage ? visible(finding.message) : '', cellText(finding, withMessage)]
        .filter((part) => part !== '')
        .join('  ')
      return [
        besidePlace(channel, place, placeWidth, said),
        ...(finding.related ?? []).map((other) =>
          indented(channel, `${visible(other.message)}: ${visible(formatPlace(other.place))}`, 4)
        ),
        withRemedy && findings[index + 1]?.remedy !== finding.remedy
          ? labelled(channel, 'mend', visible(sentence(finding.remedy)), 4, 'green')
          : ''
      ].join('')
    })
    .join('')
}

/** The cell, unless the message shows it already. */
function cellText({cell, message}: Finding, withMessage: boolean): string {
  if (cell === undefined || (withMessage && message.includes(cell))) return ''
  return `\`${visible(cell)}\``
}

/** Place and message side by side, or below each other where the terminal is too narrow. */
function besidePlace({width, paint}: Channel, place: string, placeWidth: number, said: string): string {
  const beside = width - placeWidth - 4
  if (beside >= 32) {
    const [first = '', ...more] = wrapText(said, beside)
    const hanging = ' '.repeat(placeWidth + 4)
    return [
      `  ${paint('bold', padRight(place, placeWidth))}  ${first}`,
      ...more.map((line) => hanging + line)
    ]
      .map((line) => `${line.trimEnd()}\n`)
      .join('')
  }
  const below = said === '' ? [] : wrapText(said, width - 4)
  return [`  ${paint('bold', place)}`, ...below.map((line) => `    ${line}`)]
    .map((line) => `${line}\n`)
    .join('')
}
