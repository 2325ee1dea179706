import type {AssemblageResult, Results} from '../model/results.ts'
import {hiddenFromHabitats, nameWithheld} from '../model/withheld-taxa.ts'

/** What of the results names kinds beside habitats. */
type Sections = Pick<Results, 'sites' | 'taxa' | 'design' | 'scopes' | 'sexesAndStages'>

/**
 * The results without the names that may not be tied to a place, wherever they would be tied to a habitat and some
 * habitat has a single site. Counts and ranks stay, and so does what is told of the whole study.
 */
export function withoutHiddenNames<Own extends Sections>(results: Own): Own {
  const hidden = hiddenFromHabitats(results)
  if (hidden.size === 0) return results
  const {sexes, stages} = results.sexesAndStages
  const unplaced = <Row extends {readonly taxon: string; readonly habitats: unknown}>(
    rows: readonly Row[]
  ): Row[] => rows.map((row) => (hidden.has(row.taxon) ? {...row, habitats: []} : row))
  const unnamed = (assemblage: AssemblageResult): AssemblageResult => ({
    ...assemblage,
    ranks: assemblage.ranks.map((rank) => (hidden.has(rank.taxon) ? {...rank, taxon: nameWithheld} : rank))
  })
  return {
    ...results,
    taxa: unplaced(results.taxa),
    sexesAndStages: {sexes: unplaced(sexes), stages: unplaced(stages)},
    scopes: results.scopes.map((scope) => ({
      ...scope,
      habitats: scope.habitats.map(unnamed),
      indicators: {
        ...scope.indicators,
        species: scope.indicators.species.filter(({taxon}) => !hidden.has(taxon))
      }
    }))
  }
}
