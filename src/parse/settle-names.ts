/** A name as it stands in the catch, settled to the spelling that taxa.csv has for it. */
export interface SettledName {
  readonly taxon: string
  /** Doubt that was written into the name, such as `cf.`. */
  readonly qualifier?: string
}

/**
 * Settle the names of a catch against those of taxa.csv where the meaning is certain: spaces, upper and lower
 * case, an authority behind the name, `sp.` behind a genus, `cf.` in the middle. Everything else stays as written,
 * for a rule to ask about.
 */
export function nameSettler(known: readonly {readonly taxon: string}[]): (written: string) => SettledName {
  const exact = new Set(known.map(({taxon}) => taxon))
  const loose = new Map<string, string | undefined>()
  for (const {taxon} of known) {
    const key = looseKey(taxon)
    // Two names of taxa.csv that differ in nothing but case are no certain target.
    loose.set(key, loose.has(key) && loose.get(key) !== taxon ? undefined : taxon)
  }
  const find = (name: string): string | undefined => (exact.has(name) ? name : loose.get(looseKey(name)))
  const settled = new Map<string, SettledName>()
  return (written) => {
    let name = settled.get(written)
    if (name === undefined) {
      name = settle(written, find)
      settled.set(written, name)
    }
    return name
  }
}

function settle(written: string, find: (name: string) => string | undefined): SettledName {
  const tidy = written.replace(/\s+/g, ' ').trim()
  const whole = find(tidy)
  if (whole !== undefined) return {taxon: whole}
  const {name, qualifier} = withoutDoubt(tidy)
  // A question mark alone doubts nothing: it is what somebody wrote for a name.
  if (name === '') return {taxon: tidy}
  const doubt = qualifier === undefined ? {} : {qualifier}
  const plain =
    find(name) ?? withoutAuthority(name, find) ?? withoutSp(name, find) ?? withoutSubgenus(name, find)
  return {taxon: plain ?? (qualifier === undefined ? tidy : name), ...doubt}
}

function withoutDoubt(name: string): {name: string; qualifier?: string} {
  const marks: string[] = []
  const rest = name
    .replace(/(^|\s)(cf|aff|nr|near)\.?(?=\s)/gi, (_, space: string, mark: string) => {
      marks.push(mark.toLowerCase() === 'near' ? 'near' : `${mark.toLowerCase()}.`)
      return space
    })
    .replace(/\s*\?\s*/g, () => {
      marks.push('?')
      return ' '
    })
    .replace(/\s+/g, ' ')
    .trim()
  return marks.length === 0 ? {name} : {name: rest, qualifier: marks.join(' ')}
}

/** `Carabus problematicus Herbst, 1786`: the longest known name that the text starts with, if an author follows it. */
function withoutAuthority(name: string, find: (name: string) => string | undefined): string | undefined {
  const words = name.split(' ')
  for (let length = words.length - 1; length > 0; length--) {
    const found = find(words.slice(0, length).join(' '))
    const rest = words.slice(length).join(' ')
    if (found !== undefined && /^\(?\p{Lu}[\p{L}.&,'’ -]*(\d{4})?\)?$/u.test(rest)) return found
  }
  return undefined
}

/** `Amara sp.` and `Amara spp.` say no more than `Amara`; `Amara sp. 1` names a morphospecies and stays. */
function withoutSp(name: string, find: (name: string) => string | undefined): string | undefined {
  const genus = /^(\S+) spp?\.?$/i.exec(name)?.[1]
  return genus === undefined ? undefined : (find(`${genus} sp.`) ?? find(genus))
}

/** `Carabus (Mesocarabus) problematicus` is what the list has without the subgenus, with or without an author behind. */
function withoutSubgenus(name: string, find: (name: string) => string | undefined): string | undefined {
  const [, genus, rest] = /^(\p{Lu}\S+) \(\p{Lu}\p{Ll}+\) (\p{Ll}.*)$/u.exec(name) ?? []
  if (genus === undefined) return undefined
  return find(`${genus} ${rest}`) ?? withoutAuthority(`${genus} ${rest}`, find)
}

function looseKey(name: string): string {
  return name.replace(/\s+/g, ' ').trim().toLowerCase()
}
