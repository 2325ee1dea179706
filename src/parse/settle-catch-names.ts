import type {Problem, SourceTable, Taxon} from '../model/study.ts'
import {nameSettler} from './settle-names.ts'

interface NamedRow {
  readonly row: number
  taxon: string
  qualifier?: string
}

/** Give every catch row the spelling of taxa.csv, and say once for each spelling what was taken for what. */
export function settleCatchNames(
  rows: readonly NamedRow[],
  taxa: readonly Taxon[],
  source: SourceTable | undefined
): readonly Problem[] {
  const settle = nameSettler(taxa)
  const changed = new Map<string, {taxon: string; row: number; rows: number}>()
  for (const row of rows) {
    const written = row.taxon
    const {taxon, qualifier} = settle(written)
    if (taxon === written) continue
    row.taxon = taxon
    if (qualifier !== undefined) row.qualifier ??= qualifier
    const seen = changed.get(written)
    if (seen) seen.rows += 1
    else changed.set(written, {taxon, row: row.row, rows: 1})
  }
  return [...changed].map(([written, {taxon, row, rows: count}]) => ({
    code: 'name-settled',
    place: source?.place(row, 'taxon') ?? {file: 'catch.csv'},
    message: `\`${written}\` is read as \`${taxon}\` (${count} ${count === 1 ? 'row' : 'rows'})`,
    cell: written,
    setsAside: false
  }))
}
