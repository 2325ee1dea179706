/**
 * What stands between us and the disk: a folder that is not there, a full disk, a report that somebody edited.
 * Neither a fault of ours nor a finding about the data, so it is thrown, and the command line prints it without a
 * stack and ends with 2.
 */
export class DiskTrouble extends Error {
  /** What to do about it: an instruction. */
  readonly remedy: string
  /** Files that it is about, where there are several. */
  readonly files: readonly string[]

  constructor(message: string, remedy: string, files: readonly string[] = []) {
    super(message)
    this.name = 'DiskTrouble'
    this.remedy = remedy
    this.files = files
  }
}

const words: Readonly<Record<string, readonly [message: string, remedy: string]>> = {
  ENOENT: ['is not there', 'check the spelling, and that nothing else moves files in this folder'],
  EACCES: ['may not be opened: permission denied', 'give yourself the right to it, or choose another folder'],
  EPERM: [
    'may not be changed: permission denied',
    'close programs that have it open, or give yourself the right to it'
  ],
  EROFS: ['is on a disk that cannot be written to', 'choose another folder'],
  ENOTDIR: ['has a file in its path where a folder is needed', 'check the path'],
  EISDIR: ['is a folder where a file is needed', 'check the path'],
  ENOSPC: ['cannot be written: the disk is full', 'make room and try again; nothing was changed'],
  EDQUOT: [
    'cannot be written: your share of the disk is used up',
    'make room and try again; nothing was changed'
  ],
  EBUSY: [
    'is in use and cannot be replaced',
    'close programs that have it open; a mounted folder needs a folder inside it'
  ],
  EXDEV: ['is a disk of its own and cannot be replaced', 'choose a folder inside it'],
  ENAMETOOLONG: ['has too long a name', 'choose a shorter path'],
  ELOOP: ['is a link that leads round in a circle', 'mend the link'],
  EMFILE: ['cannot be opened: too many files are open', 'close other programs and try again']
}

/** Any error of the file system as words; every other value as it is. */
export function asDiskTrouble(error: unknown, path: string): unknown {
  const code = errorCode(error)
  if (code === undefined || error instanceof DiskTrouble) return error
  const [message, remedy] = words[code] ?? [`cannot be used (${code})`, 'check the path and try again']
  return new DiskTrouble(`${path} ${message}`, remedy)
}

/** `ENOENT` and the like, where the error comes from the operating system. */
export function errorCode(error: unknown): string | undefined {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  return typeof code === 'string' && /^E[A-Z0-9]+$/.test(code) ? code : undefined
}
