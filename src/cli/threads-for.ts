import {availableParallelism} from 'node:os'
import {join} from 'node:path'
import {pathToFileURL} from 'node:url'
import {packageRoot} from '../files/package-root.ts'
import type {ShareDrawing} from '../model/draw-picture.ts'
import type {SplitWork} from '../model/split-work.ts'
import {drawInThread} from '../workers/draw-in-thread.ts'
import {splitAmongThreads} from '../workers/split-among-threads.ts'

/** More gain next to nothing: what cannot be shared out takes its time. */
const most = 4

/** What other threads can take off the hands of this one. */
export interface Threads {
  readonly split: SplitWork
  readonly draw: ShareDrawing
}

/** Threads for so many cores, or for those that there are; none where one is enough, or in a clone run from source. */
export function threadsFor(cores: number = Math.min(most, availableParallelism())): Threads | undefined {
  const isSource = import.meta.url.endsWith('.ts')
  if (cores < 2 || isSource) return undefined
  const entry = (name: string): URL => pathToFileURL(join(packageRoot().folder, 'dist', name))
  return {
    split: splitAmongThreads({entry: entry('replicates-thread.js'), cores}),
    draw: drawInThread(entry('pictures-thread.js'))
  }
}
