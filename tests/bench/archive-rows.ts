import {mkdir, mkdtemp, readFile, rm, writeFile} from 'node:fs/promises'
import {tmpdir} from 'node:os'
import {dirname, join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {unzipSync} from 'fflate'
import {writeBigStudy} from './big-study.ts'
import {type TimedRun, timedRun} from './timed-run.ts'

const pitfolio = fileURLToPath(new URL('../../dist/pitfolio.js', import.meta.url))
const floor = fileURLToPath(new URL('hash-and-deflate.mjs', import.meta.url))

/** An odd number, so that there is one in the middle. */
const rounds = 5

/**
 * `archive` and `verify` of a million catch rows, the report being built, against hashing and deflating the same
 * bytes. Both are run in turn, so that what else the machine does falls on both.
 */
export async function archiveRows(): Promise<void> {
  console.log('archive: seconds and peak memory, and SHA-256, SHA-512 and deflate of all the archived bytes')
  for (const rows of [100_000, 1_000_000]) {
    const folder = await mkdtemp(join(tmpdir(), 'pitfolio-bench-'))
    try {
      const [study, zip, bytes] = ['study', 'a.zip', 'bytes'].map((name) => join(folder, name))
      await writeBigStudy(study!, rows)
      await timedRun([pitfolio, 'build', study!, '--quiet'])
      await timedRun([pitfolio, 'archive', study!, '--out', zip!, '--quiet'])
      const size = await unpack(zip!, bytes!)
      const pairs: {readonly archive: TimedRun; readonly alone: TimedRun}[] = []
      for (let round = 0; round < rounds; round++) {
        const archive = await timedRun([pitfolio, 'archive', study!, '--out', zip!, '--quiet'])
        if (archive.exitCode !== 0) throw new Error(`archive ended with ${archive.exitCode}`)
        pairs.push({archive, alone: await timedRun([floor, bytes!])})
      }
      pairs.sort((a, b) => ratio(a) - ratio(b))
      const middle = pairs[rounds >> 1]!
      const verify = await timedRun([pitfolio, 'verify', zip!, '--quiet'])
      const said = (run: TimedRun): string =>
        `${run.seconds.toFixed(1)} s, ${run.peakMegabytes.toFixed(0)} MB`
      console.log(
        `  ${rows} rows, ${(size / 1e6).toFixed(0)} MB archived: ${said(middle.archive)}; alone ${said(middle.alone)}; ` +
          `${ratio(middle).toFixed(2)} times (${ratio(pairs[0]!).toFixed(2)} to ${ratio(pairs.at(-1)!).toFixed(2)}); verify ${said(verify)}`
      )
    } finally {
      await rm(folder, {recursive: true, force: true})
    }
  }
}

function ratio({archive, alone}: {readonly archive: TimedRun; readonly alone: TimedRun}): number {
  return archive.seconds / alone.seconds
}

async function unpack(zip: string, folder: string): Promise<number> {
  let size = 0
  for (const [path, bytes] of Object.entries(unzipSync(await readFile(zip)))) {
    await mkdir(dirname(join(folder, path)), {recursive: true})
    await writeFile(join(folder, path), bytes)
    size += bytes.length
  }
  return size
}
