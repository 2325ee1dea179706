import {codeUnitOrder} from '../../results/code-unit-order.ts'

/** `Sensitive kind 1` for every name that is not shown with a place: counted, not named. */
export function placeholderNames(withheld: ReadonlySet<string>): ReadonlyMap<string, string> {
  return new Map(
    [...withheld].sort(codeUnitOrder).map((name, index) => [name, `Sensitive kind ${index + 1}`])
  )
}

/**
 * What stands in the cell in place of a name. A doubt written into the name stays, and a spelling that differed from
 * taxa.csv still differs, so that the check finds in the copy what it found in the original.
 */
export function placeholderCell(
  written: string,
  {taxon, qualifier}: {readonly taxon: string; readonly qualifier?: string},
  placeholders: ReadonlyMap<string, string>
): string | undefined {
  const placeholder = placeholders.get(taxon)
  if (placeholder === undefined) return undefined
  if (qualifier !== undefined) return `${qualifier} ${placeholder}`
  return written.trim() === taxon ? placeholder : placeholder.toLowerCase()
}
