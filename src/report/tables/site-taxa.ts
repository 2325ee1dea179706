import type {TableDefinition} from '../table.ts'
import {siteTaxonList} from './site-taxon-list.ts'

export const siteTaxa: TableDefinition = {
  name: 'site-taxa',
  summary: 'Everything that each site caught and may be named, most numerous first.',
  tables: ({results}) =>
    results.sites.map((site) => siteTaxonList(results, site, `site-taxa-${site.id}`, site.taxa.length))
}
