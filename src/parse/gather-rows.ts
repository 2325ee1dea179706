import type {TypedRow} from './table-reader.ts'

/** Rows that say the same thing over and over, made one; with the values on which they do not agree. */
export interface Gathered {
  readonly rows: readonly TypedRow[]
  /** Field, and the keys under which its cells differ. */
  readonly disagreements: ReadonlyMap<string, readonly string[]>
}

/**
 * One row for each key: a field sheet that names site, trap and visit in every line describes each site many
 * times. Cells that differ between those lines are nobody's truth and are left empty; cells that are empty in
 * some lines are filled from the others.
 */
export function gatherRows(rows: readonly TypedRow[], keyFields: readonly string[]): Gathered {
  const byKey = new Map<string, TypedRow>()
  const disagreements = new Map<string, string[]>()
  for (const row of rows) {
    const key = keyFields.map((field) => JSON.stringify(row[field] ?? null)).join(' ')
    const gathered = byKey.get(key)
    if (gathered === undefined) {
      byKey.set(key, {...row})
      continue
    }
    for (const [field, value] of Object.entries(row)) {
      if (field === 'row') continue
      if (!(field in gathered)) gathered[field] = value
      else if (JSON.stringify(gathered[field]) !== JSON.stringify(value)) note(disagreements, field, key)
    }
  }
  for (const [field, keys] of disagreements) for (const key of keys) delete byKey.get(key)?.[field]
  return {rows: [...byKey.values()], disagreements}
}

function note(disagreements: Map<string, string[]>, field: string, key: string): void {
  const keys = disagreements.get(field) ?? []
  disagreements.set(field, keys)
  if (!keys.includes(key)) keys.push(key)
}
