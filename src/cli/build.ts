import {join} from 'node:path'
import {findBrowser} from '../browser/find-browser.ts'
import {outputFolder} from '../files/output-folder.ts'
import {readAssets} from '../files/read-assets.ts'
import {readStudyFolder} from '../files/read-study-folder.ts'
import {recordReads} from '../files/record-reads.ts'
import {watchReads} from '../files/watch-reads.ts'
import {withProvenance} from '../files/with-provenance.ts'
import {writeReport} from '../files/write-report.ts'
import {findingsFile} from '../model/findings-file.ts'
import {seedOf} from '../model/seed-of.ts'
import type {Outputs} from '../model/source.ts'
import {buildReport} from '../pipeline.ts'
import {tellUnreadable, wordsFor} from './check.ts'
import {compileLater} from './compile-later.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {tellSkipped} from './tell-skipped.ts'
import {findingsText} from './terminal/findings-text.ts'
import {counted} from './terminal/number-words.ts'
import {progress} from './terminal/progress.ts'
import {readingProgress} from './terminal/reading-progress.ts'
import {shellWord} from './terminal/shell-word.ts'
import {stopwatch} from './terminal/stopwatch.ts'
import type {Channel, Terminal} from './terminal/terminal.ts'
import {troubleText} from './terminal/trouble-text.ts'
import {findingsInWords, rowsInWords} from './terminal/verdict-text.ts'
import {visible} from './terminal/visible.ts'
import {wrapText} from './terminal/wrap-text.ts'
import {threadsFor} from './threads-for.ts'
import {unknownDocument} from './unknown-document.ts'
import {withPrints} from './with-prints.ts'

export interface BuildCommandOptions {
  readonly out?: string
  readonly force?: boolean
  readonly strict?: boolean
  readonly only?: readonly string[]
  readonly pdf?: boolean
  readonly quiet?: boolean
  readonly timings?: boolean
  /** Cores to compute with; those that there are where absent. */
  readonly cores?: number
}

/** `pitfolio build DIR`: the whole report, or nothing and the reason. */
export async function build(
  folder: string,
  options: BuildCommandOptions,
  terminal: Terminal,
  make: typeof buildReport = buildReport
): Promise<ExitCode> {
  const {force = false, strict = false, quiet = false, timings = false, only} = options
  const {out, err} = terminal
  const study = await readStudyFolder(folder)
  tellSkipped(err, study)
  const shown = options.out ?? join(folder, 'report')
  // A refusal is better heard before the work than after it; what is no study at all is told so first.
  if (study.files.has('study.yaml')) await outputFolder(study, shown, force)
  const line = progress(err, quiet)
  const recorded = recordReads(watchReads(study, readingProgress(study, line)))
  const assets = await readAssets()
  const watch = stopwatch(line.stage)
  const browser = options.pdf === true ? await findBrowser(terminal.browsers ?? {}) : undefined
  const threads = threadsFor(options.cores)
  compileLater()
  const makeReport = (pdf: boolean) =>
    make(recorded.source, assets, {
      ...(only && {only}),
      ...(pdf && {pdf}),
      ...threads,
      onStage: watch.stage
    })
  const made = await makeReport(browser !== undefined)
  const {report, notPrinted} = await withPrints(made, browser, options.pdf === true, makeReport, watch.stage)
  line.clear()
  if ('unreadable' in report) return tellUnreadable(folder, report, false, terminal)
  const {usable, textFindings, outputs} = report
  const {verdict} = findingsFile([...usable.findings, ...textFindings], usable.balance)
  // The check cannot show these: they appear only when the documents are put together.
  if (!quiet && textFindings.length > 0) err.write(`${findingsText(err, textFindings, wordsFor(folder))}\n`)
  if (strict && verdict.errors > 0) {
    err.write(troubleText(err, strictTrouble(folder, verdict)))
    return exitCode.errorsFound
  }
  const unknown = unknownDocument(only ?? [], outputs)
  if (unknown !== undefined) {
    err.write(troubleText(err, unknown))
    return exitCode.couldNotRun
  }
  if (notPrinted !== undefined) err.write(troubleText(err, notPrinted))
  const pdf = options.pdf === true && notPrinted === undefined
  const making = {
    toolVersion: assets.toolVersion,
    seed: seedOf(usable.study.settings),
    inputs: await recorded.inputs(),
    pdf,
    ...(only && {only})
  }
  const files = withProvenance(outputs, making)
  watch.stage('Writing to the disk')
  await writeReport(study, await outputFolder(study, shown, force), files, force)
  line.clear()
  if (timings) err.write(watch.text())
  if (!quiet) out.write(builtText(out, folder, shown, files, verdict))
  return exitCode.clean
}

type Verdict = ReturnType<typeof findingsFile>['verdict']

function strictTrouble(folder: string, verdict: Verdict): {message: string; remedy: string} {
  return {
    message: `${findingsInWords(verdict)}; with --strict nothing is written`,
    remedy: `see what they are with \`pitfolio check ${shellWord(folder)}\`, mend them and build again`
  }
}

function builtText(
  {paint, width}: Channel,
  folder: string,
  shown: string,
  files: Outputs,
  verdict: Verdict
): string {
  const first =
    ['index.html', 'chapter.html', 'season.html'].find((name) => files.has(name)) ??
    [...files.keys()][0] ??
    ''
  const words = `${findingsInWords(verdict)}; ${rowsInWords(verdict)}`
  const isClean = verdict.errors + verdict.cautions + verdict.notes === 0
  return [
    `The report stands in ${paint('bold', visible(shown))}: ${counted(files.size, 'file')}.`,
    `Open first: ${paint('bold', visible(join(shown, first)))}`,
    ...wrapText(`${words.charAt(0).toUpperCase()}${words.slice(1)}.`, width),
    ...(isClean ? [] : [`To see them: pitfolio check ${shellWord(folder)}`])
  ]
    .map((text) => `${text}\n`)
    .join('')
}
