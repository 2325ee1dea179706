import type {RandomStream} from './random-stream.ts'

/** How the arrangements of a permutation test come about; to be printed with its p. */
export interface PermutationScheme {
  /** Distinct arrangements there are, counted up to 2^53 - 1. */
  readonly distinct: number
  /** Every distinct arrangement is tried, or a random sample of them. */
  readonly exhaustive: boolean
  /** Arrangements tried, the observed one not counted where they are drawn at random. */
  readonly tried: number
  /** The smallest p that this number of arrangements allows. */
  readonly smallestP: number
}

export interface Permutations extends PermutationScheme {
  /** Group of every unit, by index into `groups`. */
  arrangements(): Generator<readonly number[], void, undefined>
  readonly groups: readonly (string | number)[]
  /** The arrangement as observed. */
  readonly observed: readonly number[]
}

export interface PermutationOptions {
  /** Block of each unit: labels change places within a block only. Absent: one block. */
  readonly blocks?: readonly (string | number)[]
  /** Most arrangements to try: all, where there are no more; else so many drawn at random. */
  readonly limit: number
  readonly random: RandomStream
}

/**
 * The distinct ways to lay group labels over units, within blocks, each group (and block) keeping its size.
 * Two arrangements that differ only in the names of groups of the same sizes make the same partition and are
 * one: use it with statistics that do not care for names.
 *
 * Formula: distinct = product over blocks of n_b!/product n_bg!, divided by k! for each k groups that have
 * the same size in every block. Smallest p = 1/distinct, or 1/(limit + 1) when drawn at random.
 *
 * Source: Edgington & Onghena 2007, Randomization Tests, 4th ed., chapter 3 (from memory); the observed
 * arrangement counted among the random ones: Phipson & Smyth 2010, Stat. Appl. Genet. Mol. Biol. 9:39.
 *
 * Edge cases: one group, or blocks of one group each, allow one arrangement: p is 1. Random arrangements may
 * repeat.
 *
 * @throws RangeError where blocks and units differ in number.
 *
 * @example permutations(['a', 'a', 'a', 'b', 'b', 'b'], {limit: 99}).distinct // => 10
 * @example permutations(['a', 'a', 'a', 'b', 'b', 'b'], {limit: 99}).smallestP // => 0.1
 * @example permutations(['a', 'a', 'b'], {limit: 99}).distinct // => 3
 * @example permutations(['a', 'b', 'a', 'b'], {limit: 99, blocks: [1, 1, 2, 2]}).distinct // => 2
 */
export function permutations(
  labels: readonly (string | number)[],
  {blocks, limit, random}: PermutationOptions
): Permutations {
  if (blocks && blocks.length !== labels.length) throw new RangeError('every unit needs its block')
  const groups = [...new Set(labels)]
  const observed = labels.map((label) => groups.indexOf(label))
  const blockNames = [...new Set(blocks ?? [0])]
  const blockOf = labels.map((_, unit) => (blocks ? blockNames.indexOf(blocks[unit]!) : 0))
  const sizes = blockNames.map(() => groups.map(() => 0))
  for (const [unit, group] of observed.entries()) sizes[blockOf[unit]!]![group]! += 1
  const alike = groupsOfEqualSize(sizes)
  const distinct = Math.min(Number.MAX_SAFE_INTEGER, Math.round(arrangementCount(sizes, alike)))
  const exhaustive = distinct <= limit
  return {
    groups,
    observed,
    distinct,
    exhaustive,
    tried: exhaustive ? distinct : limit,
    smallestP: 1 / (exhaustive ? distinct : limit + 1),
    arrangements: () =>
      exhaustive ? everyArrangement(blockOf, sizes, alike) : drawn(observed, blockOf, limit, random)
  }
}

/** For each group, the earlier groups that have its size in every block. */
function groupsOfEqualSize(sizes: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const groupCount = sizes[0]?.length ?? 0
  return Array.from({length: groupCount}, (_, group) =>
    Array.from({length: group}, (_unused, earlier) => earlier).filter((earlier) =>
      sizes.every((block) => block[earlier] === block[group])
    )
  )
}

function arrangementCount(
  sizes: readonly (readonly number[])[],
  alike: readonly (readonly number[])[]
): number {
  let count = 1
  for (const block of sizes) {
    let placed = 0
    for (const size of block) {
      // Grows the binomial coefficient one factor at a time, so that every step stays a whole number.
      let ways = 1
      for (let i = 1; i <= size; i += 1) ways = (ways * (placed + i)) / i
      placed += size
      count *= ways
    }
  }
  // The k-th of k alike groups has k - 1 earlier ones: the product over them is k!.
  return alike.reduce((partitions, earlier) => partitions / (earlier.length + 1), count)
}

/**
 * Depth first; alike groups must first appear in their order, which picks one arrangement of each partition.
 */
function* everyArrangement(
  blockOf: readonly number[],
  sizes: readonly (readonly number[])[],
  alike: readonly (readonly number[])[]
): Generator<readonly number[], void, undefined> {
  const left = sizes.map((block) => [...block])
  const used = alike.map(() => 0)
  const arrangement = blockOf.map(() => 0)
  yield* place(0)

  function* place(unit: number): Generator<readonly number[], void, undefined> {
    if (unit === arrangement.length) {
      yield [...arrangement]
      return
    }
    const free = left[blockOf[unit]!]!
    for (const [group, earlier] of alike.entries()) {
      if (free[group] === 0 || earlier.some((other) => used[other] === 0)) continue
      free[group]! -= 1
      used[group]! += 1
      arrangement[unit] = group
      yield* place(unit + 1)
      free[group]! += 1
      used[group]! -= 1
    }
  }
}

function* drawn(
  observed: readonly number[],
  blockOf: readonly number[],
  count: number,
  random: RandomStream
): Generator<readonly number[], void, undefined> {
  const arrangement = [...observed]
  const unitsOf = new Map<number, number[]>()
  for (const [unit, block] of blockOf.entries()) unitsOf.set(block, [...(unitsOf.get(block) ?? []), unit])
  const unitLists = [...unitsOf.values()]
  for (let draw = 0; draw < count; draw += 1) {
    for (const units of unitLists) {
      for (let last = units.length - 1; last > 0; last -= 1) {
        const from = units[random.integer(last + 1)]!
        const to = units[last]!
        const label = arrangement[to]!
        arrangement[to] = arrangement[from]!
        arrangement[from] = label
      }
    }
    yield [...arrangement]
  }
}
