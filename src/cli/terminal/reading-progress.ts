import type {StudySource} from '../../model/source.ts'
import {counted} from './number-words.ts'
import type {Progress} from './progress.ts'

/** What `watchReads` calls: names the file being read, and how much of it is behind us where it is long. */
export function readingProgress(source: StudySource, line: Progress): (path: string, bytes: number) => void {
  let current = ''
  let done = 0
  return (path, bytes) => {
    done = path === current ? done + bytes : bytes
    current = path
    const size = source.files.get(path)?.size ?? 0
    const share = size === 0 ? 100 : Math.min(100, Math.floor((100 * done) / size))
    line.say(`reading ${path}: ${share} % of ${counted(Math.ceil(size / 1e6), 'megabyte')}`)
  }
}
