import type {Rule} from './rule.ts'

export const noTaxaTable = {
  code: 'no-taxa-table',
  severity: 'note',
  summary: 'there is no taxa.csv',
  why: 'Without it the report knows no families, authorities or ranks, and a genus counts as a species.',
  remedy: 'add taxa.csv with one row for each name: taxon, rank, family, authority',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {files: {'taxa.csv': 'taxon,rank\n'}, findings: ['taxa.csv: no taxon is described']}
  ],
  *check({taxa, catch: records, tables}) {
    if (taxa.length > 0 || records.length === 0) return
    yield {place: {file: tables.taxa?.file ?? 'taxa.csv'}, message: 'no taxon is described'}
  }
} as const satisfies Rule
