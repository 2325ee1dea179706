/** A name as formats ask for it: given names, and the family name by which it is sorted. */
export interface PersonName {
  readonly given?: string
  readonly family: string
}

/**
 * `Underhedge, Hazel` and `Hazel Underhedge` are the same person. Words in small letters before the last one belong
 * to the family name: `Jan van der Berg` is van der Berg, Jan. One word alone is a family name.
 */
export function personName(written: string): PersonName {
  const name = written.replace(/\s+/g, ' ').trim()
  const comma = name.indexOf(',')
  if (comma > 0) return named(name.slice(comma + 1).trim(), name.slice(0, comma).trim())
  const words = name.split(' ')
  const particle = words.findIndex((word, index) => index > 0 && /^\p{Ll}/u.test(word))
  const cut = particle === -1 ? words.length - 1 : particle
  return named(words.slice(0, cut).join(' '), words.slice(cut).join(' '))
}

function named(given: string, family: string): PersonName {
  return given === '' ? {family} : {given, family}
}
