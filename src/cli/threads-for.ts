import {availableParallelism} from 'node:os'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {packageRoot} from '../files/package-root.ts'
import type {SplitWork} from '../model/split-work.ts'
import {splitAmongThreads} from '../workers/split-among-threads.ts'

/** More gain next to nothing: what cannot be shared out takes its time. */
const most = 4

/** Threads for so many cores, or for those that there are; none where one is enough, or in a clone run from source. */
export function threadsFor(cores: number = Math.min(most, availableParallelism())): SplitWork | undefined {
  const isSource = import.meta.url.endsWith('.ts')
  if (cores < 2 || isSource) return undefined
  const entry = pathToFileURL(join(packageRoot().folder, 'dist', 'replicates-thread.js'))
  return splitAmongThreads({entry, cores})
}
