import type {Measure} from '../../model/quantity.ts'
import {withheldTaxa} from '../../model/withheld-taxa.ts'
import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

/** A taxon's list of sites holds those where it was caught, and adds up to its total: elsewhere there was none. */
const noneCaught: Measure = {label: 'individuals', kind: 'count', value: 0}

export const taxaBySite: TableDefinition = {
  name: 'taxa-by-site',
  summary: 'Every taxon with its catch at each site, inside and outside the effort.',
  tables: ({results}) => {
    const withheld = withheldTaxa(results)
    return [
      {
        name: 'taxa-by-site',
        columns: [
          wordColumn('Taxon'),
          ...results.sites.map(({name}) => numberColumn(name)),
          numberColumn('Total')
        ],
        rows: results.taxa.map((taxon) => [
          cell.name(taxon),
          ...results.sites.map(({id}) =>
            withheld.has(taxon.taxon)
              ? cell.text('withheld')
              : cell.measure(taxon.bySite.find((site) => site.id === id)?.total ?? noneCaught)
          ),
          cell.measure(taxon.total)
        ]),
        foot: [
          [
            cell.text('All taxa'),
            ...results.sites.map((site) => cell.measure(site.catch.total)),
            cell.measure(results.catch.total)
          ]
        ],
        empty: 'Nothing was caught.'
      }
    ]
  }
}
