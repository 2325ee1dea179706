import {nearestName} from '../model/nearest-name.ts'
import type {Rule} from './rule.ts'

export const taxonNotInTaxaTable = {
  code: 'taxon-not-in-taxa-table',
  severity: 'caution',
  summary: 'a name of the catch is not in taxa.csv',
  why: 'It is used, but belongs to no family or group; if it is a slip of the pen, one species counts as two.',
  remedy: 'correct the name in catch.csv, or add it to taxa.csv',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicsu,3\nW1-1,2026-06-01,Abax parallelepipedus,2\n'
      },
      findings: ['catch.csv:2:17: `Carabus problematicsu` is not in taxa.csv (1 row)']
    }
  ],
  *check({catch: records, taxa}, index) {
    if (taxa.length === 0) return
    const unknown = new Map<string, {row: number; rows: number}>()
    for (const {taxon, row, count} of records) {
      // A zero says that nothing was there, whatever stands for its name: `none`, `-`, `no catch`.
      if (count === 0 || index.taxa.has(taxon)) continue
      const seen = unknown.get(taxon)
      if (seen) seen.rows += 1
      else unknown.set(taxon, {row, rows: 1})
    }
    for (const [taxon, {row, rows}] of unknown) {
      const meant = nearestName(taxon, index.taxa.keys())
      yield {
        place: index.place('catch', row, 'taxon'),
        message: `\`${taxon}\` is not in taxa.csv (${rows} ${rows === 1 ? 'row' : 'rows'})`,
        cell: taxon,
        ...(meant !== undefined && {
          remedy: `did you mean \`${meant}\`? Correct the name in catch.csv, or add it to taxa.csv`
        })
      }
    }
  }
} as const satisfies Rule
