import {checkStudy, type Unreadable} from '../check-study.ts'
import {readStudyFolder} from '../files/read-study-folder.ts'
import {watchReads} from '../files/watch-reads.ts'
import {findingsFile} from '../model/findings-file.ts'
import type {UsableStudy} from '../model/study.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {explainedCodes} from './explained-codes.ts'
import {tellSkipped} from './tell-skipped.ts'
import {balanceText} from './terminal/balance-text.ts'
import {type FindingsWords, findingsText} from './terminal/findings-text.ts'
import {groundLine} from './terminal/ground-line.ts'
import {progress} from './terminal/progress.ts'
import {readingProgress} from './terminal/reading-progress.ts'
import {shellWord} from './terminal/shell-word.ts'
import type {Channel, Terminal} from './terminal/terminal.ts'
import {findingsInWords, rowsInWords} from './terminal/verdict-text.ts'
import {visible, visibleJson} from './terminal/visible.ts'
import {wrapText} from './terminal/wrap-text.ts'
import {unreadableFindings} from './unreadable-findings.ts'

export interface CheckOptions {
  readonly json?: boolean
}

/** `pitfolio check DIR`: what is wrong with a study, where, and how to mend it. */
export async function check(
  folder: string,
  {json = false}: CheckOptions,
  terminal: Terminal
): Promise<ExitCode> {
  const study = await readStudyFolder(folder)
  tellSkipped(terminal.err, study)
  const line = progress(terminal.err, json)
  const outcome = await checkStudy(watchReads(study, readingProgress(study, line)))
  line.clear()
  if ('unreadable' in outcome) return tellUnreadable(folder, outcome, json, terminal)
  const {findings, balance} = outcome
  const {verdict} = findingsFile(findings, balance)
  terminal.out.write(
    json ? `${visibleJson(findingsFile(findings, balance))}\n` : checkText(terminal.out, folder, outcome)
  )
  return verdict.errors > 0 ? exitCode.errorsFound : exitCode.clean
}

/** A folder that nothing can be read from: its reasons are messages, not results. */
export function tellUnreadable(
  folder: string,
  {unreadable}: Unreadable,
  json: boolean,
  {out, err}: Terminal
): ExitCode {
  const findings = unreadableFindings(unreadable)
  if (json) out.write(`${visibleJson(findingsFile(findings, [], 'unreadable'))}\n`)
  else
    err.write(
      `${findingsText(err, findings, wordsFor(folder))}\nNo report can be made of ${visible(folder)} before this is mended.\n`
    )
  return exitCode.couldNotRun
}

export function wordsFor(folder: string): FindingsWords {
  return {
    summaries: new Map(explainedCodes.map(({code, summary}) => [code, summary])),
    showAll: `pitfolio check ${shellWord(folder)} --json`
  }
}

function checkText(channel: Channel, folder: string, {study, findings, balance}: UsableStudy): string {
  const {verdict} = findingsFile(findings, balance)
  const title = study.settings.title ?? 'A study without a title'
  const next = `pitfolio build ${shellWord(folder)}`
  const parts = [
    wrapText(visible(title), channel.width)
      .map((line) => `${channel.paint('bold', line)}\n`)
      .join(''),
    findingsText(channel, findings, wordsFor(folder)),
    groundLine(channel, '', 'what became of the rows', (words) => words) + balanceText(channel, balance),
    wrapText(verdictSentence(verdict), channel.width)
      .map((line) => `${line}\n`)
      .join('') +
      (verdict.errors > 0 ? `Next: mend them, or build without these rows: ${next}\n` : `Next: ${next}\n`)
  ]
  return parts.filter((part) => part !== '').join('\n')
}

function verdictSentence(verdict: ReturnType<typeof findingsFile>['verdict']): string {
  const words = findingsInWords(verdict)
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}; ${rowsInWords(verdict)}.`
}
