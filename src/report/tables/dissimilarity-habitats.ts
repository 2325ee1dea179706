import type {TableDefinition} from '../table.ts'
import {dissimilarityPairs} from './dissimilarity-pairs.ts'

export const dissimilarityHabitats: TableDefinition = {
  name: 'dissimilarity-habitats',
  summary: 'How far the pooled catches of the habitats differ in composition, pair by pair.',
  tables: ({results}) =>
    results.scopes.map(({id, dissimilarities}) =>
      dissimilarityPairs(`dissimilarity-habitats-${id}`, dissimilarities.habitats)
    )
}
