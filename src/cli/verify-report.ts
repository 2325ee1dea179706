import {join} from 'node:path'
import {DiskTrouble} from '../files/disk-trouble.ts'
import {readAssets} from '../files/read-assets.ts'
import {readStudyFolder} from '../files/read-study-folder.ts'
import {reportSource} from '../files/report-source.ts'
import {changedInputs, standingReport} from '../files/standing-report.ts'
import {watchReads} from '../files/watch-reads.ts'
import type {buildReport} from '../pipeline.ts'
import {tellUnreadable} from './check.ts'
import {type ExitCode, exitCode} from './exit-code.ts'
import {type Recomputed, recomputed} from './recomputed.ts'
import {tellSkipped} from './tell-skipped.ts'
import {counted} from './terminal/number-words.ts'
import {progress} from './terminal/progress.ts'
import {readingProgress} from './terminal/reading-progress.ts'
import {shellWord} from './terminal/shell-word.ts'
import type {Terminal} from './terminal/terminal.ts'
import {
  accountText,
  comparisonLines,
  documentsSection,
  numbersSame,
  type Section
} from './terminal/verify-text.ts'

/**
 * Whether a report is that of the study as it stands.
 *
 * @param folder the study; where absent, the folder that holds the report.
 */
export async function verifyReport(
  report: string,
  folder: string | undefined,
  quiet: boolean,
  terminal: Terminal,
  make: typeof buildReport
): Promise<ExitCode> {
  const {out, err} = terminal
  const standing = await standingReport(report)
  if (standing === undefined) {
    throw new DiskTrouble(
      `${report} is not a report that pitfolio made`,
      'name the folder that holds its provenance.json, or make one with `pitfolio build`'
    )
  }
  const home = folder ?? join(report, '..')
  const study = await readStudyFolder(home)
  tellSkipped(err, study)
  const assets = await readAssets()
  const {provenance, edits, lost} = standing
  const line = progress(err, quiet)
  const isOtherVersion = provenance.tool.version !== assets.toolVersion
  const notMade = isOtherVersion
    ? `documents are compared only by the version that made them, pitfolio ${provenance.tool.version}`
    : undefined
  const source = watchReads(study, readingProgress(study, line))
  const again = lost.includes('results.json')
    ? undefined
    : await recomputed(source, await reportSource(report), provenance, assets, notMade, line.stage, make)
  line.clear()
  if (again !== undefined && 'unreadable' in again) return tellUnreadable(home, again, false, terminal)
  const changes = again === undefined ? [] : changedInputs(provenance.inputs, again.inputs)
  const sections = [
    recordsSection(changes),
    filesSection([...edits, ...lost.map((path) => `missing: ${path}`)]),
    ...(again === undefined ? [] : againSections(again, changes))
  ]
  const isSound = sections.every(({ok}) => ok)
  const verdict =
    changes.length > 0
      ? `This report is out of date: ${changes.join(', ')}. Make it anew: pitfolio build ${shellWord(home)}`
      : isSound
        ? 'This report is up to date, and its numbers follow from its records.'
        : 'This report is not as pitfolio made it.'
  if (!(quiet && isSound)) {
    const heading = `The report ${report}, made with pitfolio ${provenance.tool.version}, checked with ${assets.toolVersion}`
    out.write(accountText(out, heading, sections, verdict))
  }
  return isSound ? exitCode.clean : exitCode.errorsFound
}

function recordsSection(changes: readonly string[]): Section {
  return changes.length === 0
    ? {title: 'records', ok: true, lines: ['The files of the study are those that the report was made from.']}
    : {
        title: 'records',
        ok: false,
        lines: ['The study is not what the report was made from:', ...changes.map((change) => `- ${change}`)]
      }
}

function filesSection(edits: readonly string[]): Section {
  return edits.length === 0
    ? {
        title: 'files',
        ok: true,
        lines: ['No file of the report was changed, added or lost since it was written.']
      }
    : {
        title: 'files',
        ok: false,
        lines: ['The report was edited since pitfolio wrote it:', ...edits.map((edit) => `- ${edit}`)]
      }
}

function againSections({comparison, documents}: Recomputed, changes: readonly string[]): readonly Section[] {
  const {numbers, differences} = comparison
  const moved: Section =
    differences.length === 0
      ? {title: 'numbers', ok: true, lines: [numbersSame(numbers)]}
      : {
          title: 'numbers',
          ok: false,
          lines: [
            `${counted(differences.length, 'value')} of results.json do not come out again:`,
            ...comparisonLines(differences, 'in the report')
          ]
        }
  // Documents of records that have changed differ by that, which is said already.
  if (changes.length > 0) return [moved]
  return [moved, documentsSection(documents)]
}
