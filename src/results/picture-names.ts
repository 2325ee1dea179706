import {freeName} from '../model/free-name.ts'

/**
 * The ids of sites as parts of names of pictures, which are ids on a page and file names: letters without accents,
 * digits, dashes and underscores. Each id has its own, also where capitals do not count.
 */
export function pictureNames(ids: readonly string[]): ReadonlyMap<string, string> {
  const taken = new Set<string>()
  const names = new Map<string, string>()
  for (const id of ids) {
    const wanted = id.replace(/[^A-Za-z0-9_-]/gu, (sign) => `_${sign.codePointAt(0)?.toString(16)}_`)
    const name = freeName(wanted, (one) => taken.has(one.toLowerCase()))
    taken.add(name.toLowerCase())
    names.set(id, name)
  }
  return names
}
