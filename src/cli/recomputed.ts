import {type Comparison, compareResults} from '../archive-study.ts'
import type {Unreadable} from '../check-study.ts'
import type {readAssets} from '../files/read-assets.ts'
import {readWhole} from '../files/read-whole.ts'
import {recordReads} from '../files/record-reads.ts'
import {fileHash} from '../files/sha256.ts'
import {withProvenance} from '../files/with-provenance.ts'
import type {FileHash, Provenance} from '../model/provenance.ts'
import {seedOf} from '../model/seed-of.ts'
import type {Outputs, StudySource} from '../model/source.ts'
import {type buildReport, type Report, studyResults} from '../pipeline.ts'

export interface Recomputed {
  readonly comparison: Comparison
  /** What the raw records are now. */
  readonly inputs: readonly FileHash[]
  /** Where the documents were made again: which of them differ, in words; else why they were not. */
  readonly documents:
    | {readonly made: number; readonly differing: readonly string[]}
    | {readonly notMade: string}
}

/**
 * A report computed again from its raw records.
 *
 * @param report the files of the report, by their paths in it.
 * @param notMade why the documents cannot be made again; undefined where they can.
 */
export async function recomputed(
  raw: StudySource,
  report: StudySource,
  provenance: Provenance,
  assets: Awaited<ReturnType<typeof readAssets>>,
  notMade: string | undefined,
  onStage: (stage: string) => void,
  make: typeof buildReport
): Promise<Recomputed | Unreadable> {
  const stored: unknown = JSON.parse((await readWhole(report, 'results.json')).toString('utf8'))
  const recorded = recordReads(raw)
  if (notMade !== undefined) {
    onStage('Computing every number again')
    const results = await studyResults(recorded.source)
    if ('unreadable' in results) return results
    const comparison = compareResults(stored, JSON.parse(JSON.stringify(results)))
    return {comparison, inputs: await recorded.inputs(), documents: {notMade}}
  }
  const {only, pdf} = provenance.options
  const again = await make(recorded.source, assets, {onStage, ...(only && {only}), ...(pdf && {pdf})})
  if ('unreadable' in again) return again
  const inputs = await recorded.inputs()
  const outputs = withProvenance(await withStandingPrints(again, report), {
    toolVersion: assets.toolVersion,
    seed: seedOf(again.usable.study.settings),
    inputs,
    ...(pdf && {pdf}),
    ...(only && {only})
  })
  const comparison = compareResults(stored, JSON.parse(String(outputs.get('results.json'))))
  onStage('Comparing the documents')
  return {
    comparison,
    inputs,
    documents: {made: outputs.size, differing: await differingDocuments(report, outputs)}
  }
}

/** A print holds the time at which it was made, so that it never comes out again: it is taken as it stands. */
async function withStandingPrints({outputs, toPrint = []}: Report, report: StudySource): Promise<Outputs> {
  const prints = toPrint
    .map((page) => page.replace(/\.html$/, '.pdf'))
    .filter((path) => report.files.has(path))
  const standing = prints.map(async (path) => [path, await readWhole(report, path)] as const)
  return new Map([...outputs, ...(await Promise.all(standing))])
}

async function differingDocuments(report: StudySource, outputs: Outputs): Promise<readonly string[]> {
  const paths = [...new Set([...report.files.keys(), ...outputs.keys()])].sort()
  const differing: string[] = []
  for (const path of paths) {
    const made = outputs.get(path)
    if (made === undefined) differing.push(`${path} is not among the documents that were made again`)
    else if (!report.files.has(path)) differing.push(`${path} is missing`)
    else {
      const stands = await readWhole(report, path)
      if (fileHash(path, stands).sha256 !== fileHash(path, made).sha256)
        differing.push(`${path} differs${firstDifference(stands, made)}`)
    }
  }
  return differing
}

const longestLine = 60

/** `: line 12 is "..." and made again "..."`, for text. */
function firstDifference(stands: Buffer, made: string | Uint8Array): string {
  if (typeof made !== 'string') return ''
  const [before, after] = [stands.toString('utf8').split('\n'), made.split('\n')]
  const index = after.findIndex((line, at) => line !== before[at])
  if (index === -1) return ': it goes on where it should end'
  const [one = '', other = ''] = [before[index], after[index]]
  let start = 0
  while (start < one.length && one[start] === other[start]) start += 1
  const from = Math.max(0, start - 20)
  const cut = (line: string): string =>
    JSON.stringify(`${from > 0 ? '...' : ''}${line.slice(from, from + longestLine)}`)
  return ` in line ${index + 1}: ${cut(one)} there, ${cut(other)} made again`
}
