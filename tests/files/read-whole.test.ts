import {expect, test} from 'vitest'
import {readWhole} from '../../src/files/read-whole.ts'
import type {StudySource} from '../../src/model/source.ts'

const megabyte = new Uint8Array(1024 * 1024)

/** A source of one file that says one size and has another. */
function source(stated: number, megabytes: number, onRead: () => void = () => {}): StudySource {
  return {
    files: new Map([['results.json', {size: stated}]]),
    async *read() {
      for (let count = 0; count < megabytes; count++) {
        onRead()
        yield megabyte
      }
    }
  }
}

test('a file that must be held whole is read as far as any honest one goes, and no further', async () => {
  expect((await readWhole(source(3 * megabyte.length, 3), 'results.json')).length).toBe(3 * megabyte.length)
  const refusal = 'results.json is larger than any that pitfolio writes'
  let taken = 0
  const count = () => {
    taken += 1
  }
  await expect(readWhole(source(4e9, 4000, count), 'results.json')).rejects.toThrow(refusal)
  expect(taken).toBe(0)
  // One that says that it is small is read until it is not.
  await expect(readWhole(source(10, 4000, count), 'results.json')).rejects.toThrow(refusal)
  expect(taken).toBe(129)
})
