import {mkdtemp, rm} from 'node:fs/promises'
import {tmpdir} from 'node:os'
import {join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {writeBigStudy} from './big-study.ts'
import {medianRun} from './timed-run.ts'

const pitfolio = fileURLToPath(new URL('../../dist/pitfolio.js', import.meta.url))
const papaparse = fileURLToPath(new URL('papaparse-alone.mjs', import.meta.url))

/** `check` on 10 thousand to a million catch rows, against papaparse alone on the same catch.csv in the same run. */
export async function checkRows(): Promise<void> {
  console.log('check: seconds and peak memory by number of catch rows, and papaparse alone on the same file')
  for (const rows of [10_000, 100_000, 1_000_000]) {
    const folder = await mkdtemp(join(tmpdir(), 'pitfolio-bench-'))
    try {
      await writeBigStudy(folder, rows)
      const floor = await medianRun([papaparse, join(folder, 'catch.csv')], 3)
      const run = await medianRun([pitfolio, 'check', folder], 3)
      const ratio = run.seconds / floor.seconds
      console.log(
        `${String(rows).padStart(9)} rows  ${run.seconds.toFixed(2)} s  ${run.peakMegabytes.toFixed(0)} MB  ` +
          `papaparse ${floor.seconds.toFixed(2)} s  ratio ${ratio.toFixed(2)} (limit 4 at a million)  exit ${run.exitCode}`
      )
    } finally {
      await rm(folder, {recursive: true, force: true})
    }
  }
}
