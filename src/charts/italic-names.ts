import type {TaxonResult} from '../model/results.ts'

const italicRanks: ReadonlySet<string> = new Set(['genus', 'subgenus', 'species', 'subspecies'])

/** The names that pictures set in italics: those of genus rank and below. */
export function italicNames(taxa: readonly TaxonResult[]): ReadonlySet<string> {
  return new Set(taxa.filter(({rank}) => rank !== undefined && italicRanks.has(rank)).map(({taxon}) => taxon))
}

/** Pixels that a letter of a species name takes, on average. */
export const italicLetterWidth = 5.6

/** Letters of a name that are shown: the longest names of common species have 29. */
export const mostNameLetters = 30

/** A name as far as it is shown. */
export function shownName(taxon: string): string {
  return taxon.length > mostNameLetters ? `${taxon.slice(0, mostNameLetters - 1)}…` : taxon
}
