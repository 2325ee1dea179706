/** A name of CSL-JSON: a person, or an institution as one literal. */
export interface WorkName {
  readonly family?: string
  readonly given?: string
  readonly literal?: string
  /** 'van der', written before the family name. */
  readonly 'non-dropping-particle'?: string
  readonly 'dropping-particle'?: string
  readonly suffix?: string
}

/** A published work in CSL-JSON (citation style language, data model 1.0.2): the members that pitfolio prints. */
export interface Work {
  readonly id: string
  readonly type: string
  readonly title?: string
  readonly author?: readonly WorkName[]
  readonly editor?: readonly WorkName[]
  readonly issued?: {
    readonly 'date-parts'?: readonly (readonly (number | string)[])[]
    readonly literal?: string
  }
  readonly 'container-title'?: string
  readonly 'collection-title'?: string
  readonly volume?: string | number
  readonly issue?: string | number
  readonly page?: string
  /** Article number of a journal without pages. */
  readonly number?: string | number
  readonly edition?: string | number
  readonly publisher?: string
  readonly 'publisher-place'?: string
  readonly genre?: string
  readonly version?: string
  readonly DOI?: string
  readonly URL?: string
}

/** Year of a work as printed: `2014`, or `n.d.` where none is known. */
export function yearOf({issued}: Work): string {
  const year = issued?.['date-parts']?.[0]?.[0]
  return year === undefined ? (issued?.literal ?? 'n.d.') : String(year)
}

/** Those who made a work: authors, else editors. */
export function makersOf({author, editor}: Work): readonly WorkName[] {
  return author?.length ? author : (editor ?? [])
}

/** Given names as written; initials without stops, `NJ`, with them: `N. J.` */
export function givenNames({given = ''}: WorkName): string {
  return /^\p{Lu}{1,4}$/u.test(given) ? [...given].map((letter) => `${letter}.`).join(' ') : given
}

/** `van der Ploeg` or the name of an institution. */
export function familyName(name: WorkName): string {
  return name.literal ?? [name['non-dropping-particle'], name.family].filter(Boolean).join(' ')
}
