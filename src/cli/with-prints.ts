import {printPages} from '../browser/print-pages.ts'
import type {Unreadable} from '../check-study.ts'
import type {Report} from '../pipeline.ts'
import type {Trouble} from './terminal/trouble-text.ts'

export interface Printed {
  readonly report: Report | Unreadable
  /** Why there are no prints though they were asked for. */
  readonly notPrinted?: Trouble
}

/**
 * A report with its pages printed to PDF where that was asked for and there is a browser. What cannot be printed is no
 * reason to go without the rest: the report then stands without prints, and no page names any.
 *
 * @param again makes the report once more, with or without links to prints.
 */
export async function withPrints(
  report: Report | Unreadable,
  browser: string | undefined,
  isAsked: boolean,
  again: (pdf: boolean) => Promise<Report | Unreadable>,
  onStage: (stage: string) => void
): Promise<Printed> {
  if (!isAsked || 'unreadable' in report) return {report}
  if (browser === undefined) return {report, notPrinted: noBrowser}
  const pages = new Map(
    (report.toPrint ?? []).map((name) => [name, String(report.outputs.get(name) ?? '')] as const)
  )
  const printed = await printPages(browser, pages, {onPage: (name) => onStage(`Printing ${name}`)})
  if ('reason' in printed) {
    const message = `no PDF, because ${printed.reason}, at ${printed.page}; the rest of the report is made`
    return {report: await again(false), notPrinted: {message, remedy: remedyFor(browser)}}
  }
  const outputs = [...report.outputs, ...printed].sort(([a], [b]) => (a < b ? -1 : 1))
  return {report: {...report, outputs: new Map(outputs)}}
}

const noBrowser: Trouble = {
  message: 'no PDF, because there is no Chromium, Chrome or Edge here; the rest of the report is made',
  remedy:
    'install one of them, or name yours in the environment variable PITFOLIO_BROWSER; any browser prints a page of the report as well'
}

function remedyFor(browser: string): string {
  return `try whether ${browser} starts, or name another browser in the environment variable PITFOLIO_BROWSER`
}
