import type {TableDefinition} from '../table.ts'
import {indicatorList} from './indicator-list.ts'

/** What a chapter has room for; the season record lists all. */
const leading = 10

export const leadingIndicators: TableDefinition = {
  name: 'leading-indicators',
  summary: 'The largest indicator values of each group.',
  tables: ({results}) =>
    results.scopes.map((scope) => indicatorList(results, scope, 'leading-indicators', leading))
}
