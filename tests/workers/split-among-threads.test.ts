import {existsSync} from 'node:fs'
import {expect, test} from 'vitest'
import type {Rows} from '../../src/model/split-work.ts'
import {plainRunner, type ReplicateTask, replicateRanges} from '../../src/results/replicates.ts'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {splitAmongThreads} from '../../src/workers/split-among-threads.ts'

const entry = new URL('../../dist/replicates-thread.js', import.meta.url)

function taskOf(replicates: number): ReplicateTask {
  return {
    sample: frequencyCounts([46, 22, 17, 15, 15, 9, 8, 6, 6, 4, 2, 2, 2, 2, 1, 1, 1, 1, 1, 1, 1]),
    seed: 7,
    stream: 'wood',
    replicates,
    sizes: [1, 20, 80, 157, 200],
    coverages: [0.3, 0.9],
    commonCoverage: 0.9
  }
}

/** Computes here, slowly, and counts the replicates that it was asked for. */
function slowlyHere(task: ReplicateTask) {
  const ranges = replicateRanges(task)
  const asked = {here: 0}
  const inline = (first: number, end: number): Rows => {
    asked.here += end - first
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 400)
    return ranges(first, end)
  }
  return {asked, inline}
}

test('replicates shared among two threads are those of one, and the other thread computes some of them', () => {
  expect(existsSync(entry), 'npm run build').toBe(true)
  const split = splitAmongThreads({entry, cores: 2})
  for (const replicates of [97, 64]) {
    const task = taskOf(replicates)
    const {asked, inline} = slowlyHere(task)
    expect(split(task, replicates, inline)).toEqual(plainRunner(task))
    expect(asked.here).toBeGreaterThan(0)
    expect(asked.here).toBeLessThan(replicates)
  }
})

test('a thread that cannot start leaves all of the work here, and no error', () => {
  const task = taskOf(20)
  const split = splitAmongThreads({entry: new URL('file:///nowhere/thread.js'), cores: 3})
  expect(split(task, 20, replicateRanges(task))).toEqual(plainRunner(task))
})

test('fewer replicates than threads, and none at all, are computed all the same', () => {
  const split = splitAmongThreads({entry, cores: 4})
  for (const replicates of [0, 1, 3]) {
    const task = taskOf(replicates)
    expect(split(task, replicates, replicateRanges(task))).toEqual(plainRunner(task))
  }
})
