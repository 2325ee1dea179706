import type {CatchRecord, Taxon} from '../model/study.ts'
import {codeUnitOrder} from './code-unit-order.ts'

/** A name in the catch after synonyms were resolved, with what taxa.csv says of it. */
export interface RecordedName {
  readonly index: number
  readonly name: string
  /** Row of the accepted name, else of the synonym used; absent where taxa.csv has neither. */
  readonly taxon: Taxon | undefined
  /** The strictest sensitivity category of the name and of the synonyms used for it: 1 extreme to 4 low. */
  readonly sensitive: number | undefined
}

export interface RecordedNames {
  /** By class, order, family and name, ungrouped ones last. */
  readonly names: readonly RecordedName[]
  /** The name that stands for a taxon as written in the catch. */
  readonly of: (asWritten: string) => RecordedName
}

/** All names under which at least one animal was recorded; one that was never caught changes nothing. */
export function recordedNames(taxa: readonly Taxon[], records: readonly CatchRecord[]): RecordedNames {
  const rows = new Map(taxa.map((taxon) => [taxon.taxon, taxon]))
  const written = new Set<string>()
  for (const {taxon, count} of records) if (count > 0) written.add(taxon)
  const accepted = new Map<string, string>()
  const described = new Map<string, Taxon | undefined>()
  const sensitive = new Map<string, number>()
  for (const name of [...written].sort(codeUnitOrder)) {
    const current = acceptedName(name, rows)
    accepted.set(name, current)
    described.set(current, rows.get(current) ?? described.get(current) ?? rows.get(name))
    for (const category of [rows.get(current)?.sensitive, rows.get(name)?.sensitive]) {
      if (category !== undefined)
        sensitive.set(current, Math.min(category, sensitive.get(current) ?? category))
    }
  }
  const names = [...described]
    .map(([name, taxon]) => ({name, taxon}))
    .sort(systematicOrder)
    .map(({name, taxon}, index): RecordedName => ({index, name, taxon, sensitive: sensitive.get(name)}))
  const byName = new Map(names.map((name) => [name.name, name]))
  return {names, of: (asWritten) => byName.get(accepted.get(asWritten)!)!}
}

/** Follows accepted names; a chain that runs in a circle ends where it would begin again. */
function acceptedName(name: string, rows: ReadonlyMap<string, Taxon>): string {
  const seen = new Set<string>()
  let current = name
  while (!seen.has(current)) {
    seen.add(current)
    current = rows.get(current)?.acceptedName ?? current
  }
  return current
}

type Described = Pick<RecordedName, 'name' | 'taxon'>

function systematicOrder(a: Described, b: Described): number {
  for (const rank of ['class', 'order', 'family'] as const) {
    const difference = groupOrder(a.taxon?.[rank], b.taxon?.[rank])
    if (difference !== 0) return difference
  }
  return codeUnitOrder(a.name, b.name)
}

function groupOrder(a: string | undefined, b: string | undefined): number {
  if (a === undefined || b === undefined) return Number(a === undefined) - Number(b === undefined)
  return codeUnitOrder(a, b)
}

/** Whether a name may not be shown with a place: sensitivity categories 1 and 2 (Chapman 2020). */
export function isWithheldFromPlaces({sensitive}: RecordedName): boolean {
  return sensitive !== undefined && sensitive <= 2
}
