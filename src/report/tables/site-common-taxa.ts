import type {TableDefinition} from '../table.ts'
import {siteTaxonList} from './site-taxon-list.ts'

/** What still fits beside the text on two printed pages. */
const shortListLength = 5

export const siteCommonTaxa: TableDefinition = {
  name: 'site-common-taxa',
  summary: 'The kinds that each site caught most often.',
  tables: ({results}) =>
    results.sites.map((site) => siteTaxonList(results, site, `site-common-taxa-${site.id}`, shortListLength))
}
