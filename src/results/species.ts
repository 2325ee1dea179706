import type {RecordedName} from './recorded-names.ts'

/** How finely a name tells animals apart. */
type Resolution = 'species' | 'subspecies' | 'morphospecies' | 'genus' | 'below family' | 'family' | 'coarser'

const resolutions: Readonly<Record<string, Resolution>> = {
  species: 'species',
  'species group': 'species',
  'species complex': 'species',
  'species aggregate': 'species',
  aggregate: 'species',
  subspecies: 'subspecies',
  variety: 'subspecies',
  form: 'subspecies',
  morphospecies: 'morphospecies',
  morphotype: 'morphospecies',
  subgenus: 'genus',
  genus: 'genus',
  subtribe: 'below family',
  tribe: 'below family',
  supertribe: 'below family',
  subfamily: 'below family',
  family: 'family',
  superfamily: 'coarser',
  infraorder: 'coarser',
  suborder: 'coarser',
  order: 'coarser',
  superorder: 'coarser',
  subclass: 'coarser',
  class: 'coarser',
  subphylum: 'coarser',
  phylum: 'coarser',
  kingdom: 'coarser'
}

/** What one name of a scope is in its diversity. */
export interface SpeciesDecision {
  /** The species that its animals count for, also where the name is left out. */
  readonly species: string
  /** Completes 'left out of diversity because ...'; absent where the name counts. */
  readonly leftOut: string | undefined
}

/**
 * What counts as a species among the names of one scope, decided once for the whole study: species, subspecies as
 * their species, morphospecies, and a genus or family only where no finer name within it occurs.
 */
export function speciesDecisions(names: readonly RecordedName[]): ReadonlyMap<RecordedName, SpeciesDecision> {
  const groups = groupNames(names)
  const described = names.map((name) => {
    const resolution = resolutionOf(name, groups)
    return {name, resolution, genus: genusOf(name, resolution), family: familyOf(name, resolution)}
  })
  const fineGenera = new Set<string>()
  const fineFamilies = new Set<string>()
  for (const {resolution, genus, family} of described) {
    const fine = resolution === 'species' || resolution === 'subspecies' || resolution === 'morphospecies'
    if (fine && genus !== undefined) fineGenera.add(genus)
    if ((fine || resolution === 'genus') && family !== undefined) fineFamilies.add(family)
  }
  const tribesOf = new Set(
    described.filter(({resolution}) => resolution === 'below family').map(({family}) => family)
  )
  const reasonFor = ({resolution, genus, family}: (typeof described)[number]): string | undefined => {
    switch (resolution) {
      case 'species':
      case 'subspecies':
      case 'morphospecies':
        return undefined
      case 'genus':
        return genus !== undefined && fineGenera.has(genus)
          ? `it names only a genus, and finer names of ${genus} were caught`
          : undefined
      case 'below family':
        return family !== undefined && fineFamilies.has(family)
          ? `it names only a group within a family, and finer names of ${family} were caught`
          : undefined
      case 'family':
        return family !== undefined && (fineFamilies.has(family) || tribesOf.has(family))
          ? `it names only a family, and finer names of ${family} were caught`
          : undefined
      case 'coarser':
        return 'it names only a group above the family'
    }
  }
  return new Map(
    described.map((each) => {
      const species = each.resolution === 'subspecies' ? speciesOfSubspecies(each.name.name) : each.name.name
      return [each.name, {species, leftOut: reasonFor(each)}]
    })
  )
}

/** Names that other rows use as class, order or family, with what such a name resolves to. */
function groupNames(names: readonly RecordedName[]): ReadonlyMap<string, Resolution> {
  const groups = new Map<string, Resolution>()
  for (const {taxon} of names) {
    if (taxon?.family !== undefined) groups.set(taxon.family, 'family')
  }
  for (const {taxon} of names) {
    if (taxon?.class !== undefined) groups.set(taxon.class, 'coarser')
    if (taxon?.order !== undefined) groups.set(taxon.order, 'coarser')
  }
  return groups
}

function resolutionOf({name, taxon}: RecordedName, groups: ReadonlyMap<string, Resolution>): Resolution {
  const rank = taxon?.rank?.trim().toLowerCase() ?? ''
  const stated = Object.hasOwn(resolutions, rank) ? resolutions[rank] : undefined
  return stated ?? groups.get(name) ?? resolutionByForm(name)
}

/** The rank that the form of a name shows, for names of which nothing else is known. */
function resolutionByForm(name: string): Resolution {
  const [first = '', second, third] = nameWords(name)
  if (/^(sp|spec|spp|indet|gen)\.?$/i.test(second ?? '')) {
    return third === undefined ? resolutionByForm(first) : 'morphospecies'
  }
  if (second === undefined) {
    if (!/^\p{Lu}[\p{Ll}-]+$/u.test(first)) return 'morphospecies'
    return /idae$/.test(first) ? 'family' : /in(ae|i)$/.test(first) ? 'below family' : 'genus'
  }
  if (!/^\p{Ll}[\p{Ll}-]+$/u.test(second)) return 'morphospecies'
  return third !== undefined && /^\p{Ll}/u.test(third) ? 'subspecies' : 'species'
}

function genusOf({name, taxon}: RecordedName, resolution: Resolution): string | undefined {
  if (resolution === 'family' || resolution === 'coarser' || resolution === 'below family') return undefined
  const first = nameWords(name)[0]
  return taxon?.genus ?? (first !== undefined && /^\p{Lu}[\p{Ll}-]+$/u.test(first) ? first : undefined)
}

function familyOf({name, taxon}: RecordedName, resolution: Resolution): string | undefined {
  if (taxon?.family !== undefined) return taxon.family
  const first = nameWords(name)[0] ?? ''
  return resolution === 'family' || /idae$/.test(first) ? first : undefined
}

function speciesOfSubspecies(name: string): string {
  return nameWords(name).slice(0, 2).join(' ')
}

/** The words of a name without a subgenus in brackets and without words of doubt. */
function nameWords(name: string): readonly string[] {
  return name.split(/\s+/).filter((word) => word !== '' && !/^\(.*\)$|^(cf|aff|nr)\.?$/.test(word))
}
