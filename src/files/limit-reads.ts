import {getHeapStatistics} from 'node:v8'
import type {StudySource} from '../model/source.ts'
import {DiskTrouble} from './disk-trouble.ts'

/** Bytes of memory that a byte of records may come to: rows, their places, what is found about them. */
const memoryPerByte = 10

/**
 * A source of which no more is read than the memory of this process holds: a zip of a few megabytes can unpack to any
 * number of rows.
 *
 * @throws DiskTrouble from the reading, where more is asked for.
 */
export function limitReads(
  inner: StudySource,
  most: number = getHeapStatistics().heap_size_limit / memoryPerByte
): StudySource {
  let taken = 0
  return {
    files: inner.files,
    async *read(path) {
      for await (const chunk of inner.read(path)) {
        taken += chunk.length
        if (taken > most) {
          throw new DiskTrouble(
            `the raw records are more than the memory of this process holds (${Math.floor(most / 1e6)} megabytes)`,
            'give Node.js more memory, with NODE_OPTIONS=--max-old-space-size=16000 before the command'
          )
        }
        yield chunk
      }
    }
  }
}
