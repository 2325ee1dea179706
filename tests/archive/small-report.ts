import {checkStudy} from '../../src/check-study.ts'
import {type ArchiveOptions, archive} from '../../src/cli/archive.ts'
import {type VerifyOptions, verify} from '../../src/cli/verify.ts'
import {DiskTrouble} from '../../src/files/disk-trouble.ts'
import {json} from '../../src/formats/index.ts'
import {findingsFile} from '../../src/model/findings-file.ts'
import type {buildReport} from '../../src/pipeline.ts'
import {computeResults} from '../../src/results/index.ts'
import {capturedTerminal} from '../cli/captured-terminal.ts'

/** A report with all the numbers and next to no documents, so that tests of the archive do not draw charts. */
export const smallReport: typeof buildReport = async (source) => {
  const usable = await checkStudy(source)
  if ('unreadable' in usable) return usable
  const results = computeResults(usable)
  const sites = results.sites.map(
    ({id, catch: {individuals}}) => `${id},${'value' in individuals ? individuals.value : ''}\n`
  )
  const outputs = new Map([
    ['figures/effort.svg', '<svg/>\n'],
    ['findings.json', json(findingsFile(usable.findings, usable.balance))],
    ['index.html', `<title>${usable.study.settings.title}</title>\n<p>${sites.join(' ')}</p>\n`],
    ['results.json', json(results)],
    ['tables/catch-by-site.csv', `site,individuals\n${sites.join('')}`]
  ])
  return {usable, textFindings: [], outputs}
}

export interface Said {
  readonly code: number
  readonly out: string
  readonly err: string
}

async function said(
  command: (terminal: ReturnType<typeof capturedTerminal>['terminal']) => Promise<number>
): Promise<Said> {
  const captured = capturedTerminal()
  try {
    const code = await command(captured.terminal)
    return {code, out: captured.out(), err: captured.err()}
  } catch (error) {
    if (!(error instanceof DiskTrouble)) throw error
    return {code: 2, out: captured.out(), err: [error.message, ...error.files, error.remedy].join('\n')}
  }
}

/** `pitfolio archive`, with the small report in place of the whole one. */
export function archived(study: string, options: ArchiveOptions = {}): Promise<Said> {
  return said((terminal) => archive(study, options, terminal, smallReport))
}

/** `pitfolio verify`, with the small report in place of the whole one. */
export function verified(path: string | undefined, options: VerifyOptions = {}): Promise<Said> {
  return said((terminal) => verify(path, options, terminal, smallReport))
}
