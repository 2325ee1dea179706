import {visible} from './visible.ts'

/** A path as it can be typed behind a command. */
export function shellWord(path: string): string {
  return /^[\w./~:@%+,=-]+$/u.test(path) ? path : `'${visible(path).replaceAll("'", "'\\''")}'`
}
