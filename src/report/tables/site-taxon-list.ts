import type {Results, SiteResult, TaxonResult} from '../../model/results.ts'
import type {ReportTable} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

/** The first so many names of a site, most numerous first; the whole list is footed by the site's catch. */
export function siteTaxonList(results: Results, site: SiteResult, name: string, length: number): ReportTable {
  const taxa = new Map(results.taxa.map((taxon) => [taxon.taxon, taxon]))
  const listed = site.taxa.slice(0, length)
  const named = listed.some(({taxon}) => taxa.get(taxon)?.englishName !== undefined)
  const families = listed.some(({taxon}) => taxa.get(taxon)?.family !== undefined)
  const whole = listed.length === site.taxa.length
  return {
    name,
    columns: [
      wordColumn('Scientific name'),
      ...(named ? [wordColumn('Everyday name')] : []),
      ...(families ? [wordColumn('Family')] : []),
      numberColumn('Animals caught')
    ],
    rows: listed.map(({taxon, total}) => {
      const known: Pick<TaxonResult, 'rank' | 'englishName' | 'family'> = taxa.get(taxon) ?? {}
      return [
        cell.name({taxon, rank: known.rank}),
        ...(named ? [cell.text(known.englishName)] : []),
        ...(families ? [cell.text(known.family)] : []),
        cell.measure(total)
      ]
    }),
    ...(whole && {
      foot: [
        [
          cell.text('All animals caught'),
          ...(named ? [cell.blank] : []),
          ...(families ? [cell.blank] : []),
          cell.measure(site.catch.total)
        ]
      ]
    }),
    empty: 'Nothing was caught at this site.'
  }
}
