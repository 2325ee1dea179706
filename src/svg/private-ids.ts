/**
 * Renames ids and the references to them (`url(#clip1)`) to `d1_<figure>`, `d2_<figure>` and so on, in the order in
 * which they are met. Several charts on one page would otherwise share `clip1`, and all use the first.
 */
export function privateIds(figure: string): (value: string) => string {
  const names = new Map<string, string>()
  const nameFor = (id: string): string => {
    const known = names.get(id) ?? `d${names.size + 1}_${figure}`
    names.set(id, known)
    return known
  }
  return (value) => {
    const reference = /^url\(#(.+)\)$/.exec(value)
    return reference ? `url(#${nameFor(reference[1]!)})` : nameFor(value)
  }
}
