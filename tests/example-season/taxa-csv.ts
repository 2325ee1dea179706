import {carabids} from './carabids.ts'
import {csvText} from './csv-text.ts'
import type {CatchRow} from './season-records.ts'
import {spiders} from './spiders.ts'

const columns = [
  'taxon',
  'rank',
  'class',
  'order',
  'family',
  'genus',
  'authority',
  'english_name',
  'guild',
  'body_length_mm',
  'red_list',
  'legal_status',
  'sensitive',
  'accepted_name',
  'note'
] as const

type TaxonRow = {readonly [column in (typeof columns)[number]]?: string | number | undefined}

const beetle = {class: 'Insecta', order: 'Coleoptera'}
const spider = {class: 'Arachnida', order: 'Araneae'}

/** Names of the bench that are no species: what could not be named further, and an older name. */
const otherNames: readonly TaxonRow[] = [
  {...beetle, taxon: 'Amara sp.', rank: 'genus', family: 'Carabidae', genus: 'Amara', guild: 'seed eater'},
  {...beetle, taxon: 'Carabidae', rank: 'family', family: 'Carabidae'},
  {...spider, taxon: 'Linyphiidae', rank: 'family', family: 'Linyphiidae', guild: 'sheet-web weaver'},
  {...spider, taxon: 'Lycosidae', rank: 'family', family: 'Lycosidae', guild: 'ground hunter'},
  {
    ...beetle,
    taxon: 'Platynus assimilis',
    rank: 'species',
    family: 'Carabidae',
    genus: 'Platynus',
    authority: '(Paykull, 1790)',
    guild: 'predator',
    body_length_mm: 11,
    accepted_name: 'Limodromus assimilis'
  }
]

const species: readonly TaxonRow[] = [...carabids, ...spiders].map((taxon) => ({
  taxon: taxon.taxon,
  rank: 'species',
  class: taxon.class,
  order: taxon.order,
  family: taxon.family,
  genus: taxon.taxon.split(' ')[0],
  authority: taxon.authority,
  english_name: taxon.englishName,
  guild: taxon.guild,
  body_length_mm: taxon.bodyLengthMm,
  red_list: taxon.redList,
  legal_status: taxon.legalStatus,
  sensitive: taxon.sensitive,
  note: taxon.note
}))

/** Names of kinds, without the names above their rank. */
export const speciesNames: ReadonlySet<string> = new Set(species.map((row) => String(row.taxon)))

/** One row for every name in the catch that the list knows; a misspelt name stays out, as it would. */
export function taxaCsv(rows: readonly CatchRow[]): string {
  const used = new Set(rows.map((row) => row.taxon))
  // The older name needs the row of the name that is accepted now.
  for (const row of otherNames)
    if (used.has(String(row.taxon)) && row.accepted_name) used.add(String(row.accepted_name))
  return csvText(
    columns,
    [...species, ...otherNames].filter((row) => used.has(String(row.taxon)))
  )
}
