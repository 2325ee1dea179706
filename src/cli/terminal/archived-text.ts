import type {PlannedArchive} from '../../archive-study.ts'
import type {WrittenZip} from '../../files/write-zip.ts'
import {counted, grouped} from './number-words.ts'
import {shellWord} from './shell-word.ts'
import type {Channel} from './terminal.ts'
import {visible} from './visible.ts'
import {wrapText} from './wrap-text.ts'

/** What was archived, what is held back, and what to do next. */
export function archivedText(
  channel: Channel,
  shown: string,
  planned: PlannedArchive,
  written: WrittenZip
): string {
  const {archive: made, hasTarget} = planned
  const {paint} = channel
  const size = `${grouped(Math.max(1, Math.round(written.zip.bytes / 1000)))} kB`
  const notes = [
    ...(made.raw === 'generalised'
      ? ['Its raw files are a copy that others may see; --exact puts the originals in.', ...made.heldBack]
      : made.heldBack.length > 0
        ? [
            'It holds the original files and is not for publication. Everything outside raw/ is generalised:',
            ...made.heldBack
          ]
        : []),
    ...(made.leftOut.length > 0
      ? [`Left out, because pitfolio does not read them: ${made.leftOut.map(({path}) => path).join(', ')}.`]
      : []),
    ...planned.kindsInTexts.map(
      ({file, kind}) =>
        `${file} names ${kind}, which is not to be named with a place. Texts go in as they are written: read it before you hand the archive on.`
    ),
    ...(made.notRecomputable.length > 0
      ? [
          `${counted(made.notRecomputable.length, 'value')} of the report cannot be computed again from the copy; archive.json names them.`
        ]
      : []),
    ...(hasTarget
      ? []
      : [
          'study.yaml names no target groups, so the archive says nothing about what was looked for and not found (Humboldt Extension).'
        ])
  ]
  return [
    `The archive stands in ${paint('bold', visible(shown))}: ${counted(written.files.length, 'file')}, ${size}.\n`,
    `SHA-256 ${written.zip.sha256}\n`,
    ...notes.map((note) => wrapped(channel, note)),
    `Check it: pitfolio verify ${shellWord(shown)}\n`
  ].join('')
}

/** Text in lines that fit. */
export function wrapped({width}: Channel, text: string): string {
  return `${wrapText(visible(text), width).join('\n')}\n`
}
