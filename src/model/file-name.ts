import {freeName} from './free-name.ts'

/**
 * A name of the study (a site, a scope) as part of a file name, safe on every file system and in every zip. Signs
 * outside letters, digits, dot, dash and underscore become `~` and their code point, so that two different names
 * never meet in one file; case is told apart by a mark for the same reason.
 */
export function fileName(name: string): string {
  const safe = [...name.normalize('NFC')]
    .map((sign) =>
      /[\p{L}\p{N}._-]/u.test(sign) ? sign : sign === ' ' ? '-' : `~${sign.codePointAt(0)?.toString(16)}`
    )
    .join('')
  // A leading dot hides a file; a reserved device name cannot be written on some systems.
  return /^\.|^(con|prn|aux|nul|com\d|lpt\d)$/i.test(safe) ? `_${safe}` : safe
}

/** File names for a list of names, each its own: where two would meet, case aside, later ones get a number. */
export function fileNames(names: readonly string[]): ReadonlyMap<string, string> {
  const taken = new Set<string>()
  const result = new Map<string, string>()
  for (const name of names) {
    if (result.has(name)) continue
    const chosen = freeName(fileName(name), (one) => taken.has(one.toLowerCase()))
    taken.add(chosen.toLowerCase())
    result.set(name, chosen)
  }
  return result
}
