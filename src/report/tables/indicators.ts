import type {TableDefinition} from '../table.ts'
import {indicatorList} from './indicator-list.ts'

export const indicators: TableDefinition = {
  name: 'indicators',
  summary: 'Indicator value of every species for the habitat that it marks most.',
  tables: ({results}) =>
    results.scopes.map((scope) =>
      indicatorList(results, scope, 'indicators', scope.indicators.species.length)
    )
}
