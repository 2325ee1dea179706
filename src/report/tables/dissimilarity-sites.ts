import type {TableDefinition} from '../table.ts'
import {dissimilarityPairs} from './dissimilarity-pairs.ts'

export const dissimilaritySites: TableDefinition = {
  name: 'dissimilarity-sites',
  summary: 'How far the catches of the sites differ in composition, pair by pair.',
  tables: ({results}) =>
    results.scopes.map(({id, dissimilarities}) =>
      dissimilarityPairs(`dissimilarity-sites-${id}`, dissimilarities.sites)
    )
}
