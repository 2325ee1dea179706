import {readAssets} from '../src/files/read-assets.ts'
import type {Outputs} from '../src/model/source.ts'
import {buildReport} from '../src/pipeline.ts'
import {exampleStudy} from './example-season/make-example.ts'
import {memorySource} from './memory-source.ts'

/** The files of the example study, with so few replicates that nobody waits for the bootstrap. */
export function quickExample(): ReadonlyMap<string, string> {
  const files = exampleStudy()
  const text = files.get('study.yaml') ?? ''
  const few = text
    .replace('replicates: 1000', 'replicates: 20')
    .replace('permutations: 9999', 'permutations: 99')
  return new Map([...files, ['study.yaml', few]])
}

/** The report on the example study, built in memory. */
export async function exampleReport(): Promise<Outputs> {
  const report = await buildReport(memorySource(quickExample()), await readAssets())
  if ('unreadable' in report) throw new Error(JSON.stringify(report.unreadable))
  return report.outputs
}
