import {join} from 'node:path'
import {isReportFolder} from '../files/report-mark.ts'
import {buildReport} from '../pipeline.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import type {Terminal} from './terminal/terminal.ts'
import {troubleText} from './terminal/trouble-text.ts'
import {verifyArchive} from './verify-archive.ts'
import {verifyReport} from './verify-report.ts'

export interface VerifyOptions {
  readonly report?: string
  readonly quiet?: boolean
}

/** `pitfolio verify PATH`, `pitfolio verify --report DIR/report`: whether what stands there follows from its records. */
export async function verify(
  path: string | undefined,
  {report, quiet = false}: VerifyOptions,
  terminal: Terminal,
  make: typeof buildReport = buildReport
): Promise<ExitCode> {
  if (report !== undefined) return verifyReport(report, path, quiet, terminal, make)
  if (path === undefined) {
    terminal.err.write(
      troubleText(terminal.err, {
        message: 'there is nothing named to verify',
        remedy: 'name an archive, as a zip or unpacked, or a report with --report'
      })
    )
    return exitCode.couldNotRun
  }
  if (await isReportFolder(path)) return verifyReport(path, undefined, quiet, terminal, make)
  const inside = join(path, 'report')
  // A study with its report: that is what can be verified of it.
  if (await isReportFolder(inside)) return verifyReport(inside, path, quiet, terminal, make)
  return verifyArchive(path, quiet, terminal, make)
}
