import type {AssemblageResult} from '../model/results.ts'
import {nameWithheld} from '../model/withheld-taxa.ts'

/** A row of the picture of composition. */
export interface SpeciesShare {
  readonly taxon: string
  /** Of the individuals of each habitat, in their order. */
  readonly byHabitat: readonly number[]
  /** Whether it stands for all species that have no row. */
  readonly isRest: boolean
}

const mostRows = 12

/**
 * The species that make up most of some habitat's catch, those of the first habitat first, so that what is common in
 * one and rare in the others stands together; then all others in one row.
 */
export function speciesShares(habitats: readonly AssemblageResult[]): readonly SpeciesShare[] {
  const maps = habitats.map(({ranks}) => {
    const shares = new Map<string, number>()
    for (const {taxon, share} of ranks) shares.set(taxon, (shares.get(taxon) ?? 0) + share)
    return shares
  })
  const names = [...new Set(habitats.flatMap(({ranks}) => ranks.map(({taxon}) => taxon)))]
  const all = names.map((taxon) => {
    const byHabitat = maps.map((shares) => shares.get(taxon) ?? 0)
    const largest = Math.max(...byHabitat)
    return {taxon, byHabitat, largest, home: byHabitat.indexOf(largest), isRest: false}
  })
  const chosen = all
    .filter(({taxon}) => taxon !== nameWithheld)
    .toSorted((one, other) => other.largest - one.largest)
    .slice(0, mostRows)
  const rest = all.filter((species) => !chosen.includes(species))
  const shown = chosen
    .toSorted((one, other) => one.home - other.home || other.largest - one.largest)
    .map(({taxon, byHabitat, isRest}) => ({taxon, byHabitat, isRest}))
  if (rest.length === 0) return shown
  const sums = habitats.map((_, index) => rest.reduce((sum, {byHabitat}) => sum + (byHabitat[index] ?? 0), 0))
  return [...shown, {taxon: 'all other species', byHabitat: sums, isRest: true}]
}
