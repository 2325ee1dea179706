import {mkdir, mkdtemp, readFile, rm, writeFile} from 'node:fs/promises'
import {tmpdir} from 'node:os'
import {dirname, join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {unzipSync} from 'fflate'
import {writeBigStudy} from './big-study.ts'
import {medianRun, timedRun} from './timed-run.ts'

const pitfolio = fileURLToPath(new URL('../../dist/pitfolio.js', import.meta.url))
const floor = fileURLToPath(new URL('hash-and-deflate.mjs', import.meta.url))

/** `archive` and `verify` of a million catch rows, the report being built, against hashing and deflating the same bytes. */
export async function archiveRows(): Promise<void> {
  console.log('archive: seconds and peak memory, and SHA-256, SHA-512 and deflate of all the archived bytes')
  for (const rows of [100_000, 1_000_000]) {
    const folder = await mkdtemp(join(tmpdir(), 'pitfolio-bench-'))
    try {
      const [study, zip, bytes] = ['study', 'a.zip', 'bytes'].map((name) => join(folder, name))
      await writeBigStudy(study!, rows)
      await timedRun([pitfolio, 'build', study!, '--quiet'])
      const archive = await medianRun([pitfolio, 'archive', study!, '--out', zip!, '--quiet'], 3)
      const size = await unpack(zip!, bytes!)
      const alone = await medianRun([floor, bytes!], 3)
      const verify = await timedRun([pitfolio, 'verify', zip!, '--quiet'])
      const said = (run: typeof archive): string =>
        `${run.seconds.toFixed(1)} s, ${run.peakMegabytes.toFixed(0)} MB`
      const times = (archive.seconds / alone.seconds).toFixed(2)
      console.log(
        `  ${rows} rows, ${(size / 1e6).toFixed(0)} MB archived: ${said(archive)}; alone ${said(alone)}; ${times} times; verify ${said(verify)}`
      )
    } finally {
      await rm(folder, {recursive: true, force: true})
    }
  }
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
