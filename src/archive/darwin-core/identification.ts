import type {RecordedName} from '../../results/recorded-names.ts'

/** A name as Darwin Core wants it: what is certain, and beside it what was written. */
export interface Identification {
  readonly scientificName: string
  readonly authorship?: string
  readonly rank?: string
  readonly className?: string
  readonly order?: string
  readonly family?: string
  readonly genus?: string
  readonly vernacular?: string
  /** `cf. familiaris` */
  readonly qualifier?: string
  /** The whole text, where the certain name says less. */
  readonly verbatim?: string
}

/**
 * The lowest name that is certain. `Amara cf. familiaris` is certainly an Amara; a morphospecies is certainly of its
 * genus or family; both keep their full text beside it.
 *
 * Source: Darwin Core quick reference guide, notes on scientificName and identificationQualifier.
 */
export function identificationOf(
  recorded: RecordedName,
  written: string,
  doubt: string | undefined
): Identification {
  const {name, taxon} = recorded
  const {class: className, order, family, genus, authority, englishName} = taxon ?? {}
  const rank = taxon?.rank?.toLowerCase()
  const groups = {
    ...(className !== undefined && {className}),
    ...(order !== undefined && {order}),
    ...(family !== undefined && {family}),
    ...(genus !== undefined && {genus})
  }
  const isCertain =
    doubt === undefined && rank !== 'morphospecies' && !/\b(spp?|cf|aff|nr)\b\.?|\?/i.test(name)
  if (isCertain) {
    return {
      scientificName: name,
      ...(authority !== undefined && {authorship: authority}),
      ...(rank !== undefined && {rank}),
      ...groups,
      ...(englishName !== undefined && {vernacular: englishName}),
      ...(written !== name && {verbatim: written})
    }
  }
  const [first = name, ...epithets] = name.split(' ')
  const certain = coarser(first, epithets.length > 0, groups)
  const verbatim = doubt === undefined ? written : [first, doubt, ...epithets].join(' ')
  const qualifier = doubt === undefined ? undefined : [doubt, ...epithets].join(' ')
  return {...certain, ...groups, ...(qualifier !== undefined && {qualifier}), verbatim}
}

/** The genus, else the next group upwards that is on record. */
function coarser(
  first: string,
  hasEpithet: boolean,
  {className, order, family, genus}: Pick<Identification, 'className' | 'order' | 'family' | 'genus'>
): {readonly scientificName: string; readonly rank?: string} {
  if (genus !== undefined) return {scientificName: genus, rank: 'genus'}
  // Families and subfamilies of animals end so (International Code of Zoological Nomenclature, article 29.2).
  if (/^\p{Lu}\p{Ll}+idae$/u.test(first)) return {scientificName: first, rank: 'family'}
  if (/^\p{Lu}\p{Ll}+inae$/u.test(first)) return {scientificName: first, rank: 'subfamily'}
  if (hasEpithet && /^\p{Lu}\p{Ll}+$/u.test(first)) return {scientificName: first, rank: 'genus'}
  if (family !== undefined) return {scientificName: family, rank: 'family'}
  if (order !== undefined) return {scientificName: order, rank: 'order'}
  if (className !== undefined) return {scientificName: className, rank: 'class'}
  return {scientificName: first}
}
