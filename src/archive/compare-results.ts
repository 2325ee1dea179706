/** One value that is not the same in two sets of results. */
export interface Difference {
  /** Keys from the top, parted by `/`; items of a list by their id where they have one. */
  readonly pointer: string
  /** What the value is, in the words of the report. */
  readonly label: string
  readonly stored: string
  readonly recomputed: string
}

/**
 * Two numbers that differ by no more than this part of the larger one are taken for the same: other machines round
 * the last digits of exponentials and logarithms differently. Counts are whole, so for them it means equality.
 */
export const tolerance = 1e-9

/** Keys by which the items of a list are told apart, if each has its own. */
const identities = ['id', 'taxon', 'table', 'code', 'condition', 'label', 'name', 'what'] as const

export interface Comparison {
  /** Numbers that stand in both. */
  readonly numbers: number
  readonly differences: readonly Difference[]
}

/** Every value of `stored` and `recomputed` that differs, in the order of `stored`. Both are plain JSON values. */
export function compareResults(stored: unknown, recomputed: unknown): Comparison {
  const differences: Difference[] = []
  let numbers = 0
  compare(stored, recomputed, '', '')
  return {numbers, differences}

  function compare(before: unknown, after: unknown, pointer: string, label: string): void {
    if (typeof before === 'number' && typeof after === 'number') numbers += 1
    if (isSame(before, after)) return
    const [one, other] = [membersOf(before), membersOf(after)]
    if (one === undefined || other === undefined) {
      const [stored, again] = bothShown(before, after)
      differences.push({pointer, label, stored, recomputed: again})
      return
    }
    const said = labelOf(before) ?? labelOf(after) ?? label
    const keys = new Set([...one.keys(), ...other.keys()])
    for (const key of keys) {
      compare(one.get(key), other.get(key), `${pointer}/${escaped(key)}`, said)
    }
  }
}

function isSame(before: unknown, after: unknown): boolean {
  if (typeof before === 'number' && typeof after === 'number')
    return (
      before === after || Math.abs(before - after) <= tolerance * Math.max(Math.abs(before), Math.abs(after))
    )
  return Object.is(before, after)
}

/** Members of an object or list by key; undefined for everything else. */
function membersOf(value: unknown): ReadonlyMap<string, unknown> | undefined {
  if (typeof value !== 'object' || value === null) return undefined
  if (!Array.isArray(value))
    return new Map(Object.entries(value).filter(([, member]) => member !== undefined))
  const items: readonly unknown[] = value
  const identity = identities.find((key) => areTold(items, key))
  if (identity === undefined) return new Map(items.map((item, index) => [`${index}`, item]))
  return new Map(items.map((item) => [`${(item as Readonly<Record<string, unknown>>)[identity]}`, item]))
}

function areTold(items: readonly unknown[], key: string): boolean {
  if (items.length === 0) return false
  const seen = new Set<unknown>()
  for (const item of items) {
    const value =
      typeof item === 'object' && item !== null ? (item as Readonly<Record<string, unknown>>)[key] : undefined
    if (typeof value !== 'string' || seen.has(value)) return false
    seen.add(value)
  }
  return true
}

function labelOf(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null || !('label' in value && 'kind' in value)) return undefined
  return typeof value.label === 'string' ? value.label : undefined
}

const longest = 60

/** What is shown of something that is no single value, and stands in one of the two only. */
export const wholeEntry = 'an entry'

/** Two numbers with as many digits as tell them apart, whole ones in full; everything else as it is. */
function bothShown(before: unknown, after: unknown): readonly [string, string] {
  const isBroken = (value: unknown): value is number => typeof value === 'number' && !Number.isInteger(value)
  if (typeof before !== 'number' || typeof after !== 'number' || !(isBroken(before) || isBroken(after)))
    return [shown(before), shown(after)]
  for (let digits = fewestDigits; digits < mostDigits; digits++) {
    const [one, other] = [before, after].map((value) => `${Number(value.toPrecision(digits))}`)
    if (one !== other) return [one!, other!]
  }
  return [`${before}`, `${after}`]
}

const fewestDigits = 4
/** A number of 64 bits has no more. */
const mostDigits = 17

function shown(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'object' && value !== null) return wholeEntry
  const text = `${value}`
  return text.length > longest ? `${text.slice(0, longest)} ...` : text
}

/** Whether a place is one of those listed, or inside one. */
export function isListed(pointer: string, listed: readonly string[]): boolean {
  return listed.some((known) => pointer === known || pointer.startsWith(`${known}/`))
}

function escaped(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1')
}
