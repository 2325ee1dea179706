/**
 * Pairs of texts that differ by one slip of the pen: a letter too many, too few or wrong, or two neighbours that
 * changed places. Two texts are that close only if leaving out one letter or none makes them alike, so texts meet
 * in buckets and nobody compares all with all. Time and space grow with the letters of all texts.
 */
export function oneSlipApart(texts: readonly string[]): readonly (readonly [string, string])[] {
  const buckets = new Map<string, string[]>()
  const pairs = new Map<string, readonly [string, string]>()
  for (const text of texts) {
    for (const key of new Set(withoutOneLetter(text))) {
      const bucket = buckets.get(key)
      if (bucket === undefined) {
        buckets.set(key, [text])
        continue
      }
      for (const other of bucket) {
        if (other !== text && isOneSlip(other, text)) pairs.set(`${other}\u0000${text}`, [other, text])
      }
      bucket.push(text)
    }
  }
  return [...pairs.values()]
}

function withoutOneLetter(text: string): readonly string[] {
  return [text, ...Array.from(text, (_, at) => text.slice(0, at) + text.slice(at + 1))]
}

export function isOneSlip(one: string, other: string): boolean {
  let start = 0
  while (start < one.length && one[start] === other[start]) start++
  let end = 0
  const shorter = Math.min(one.length, other.length) - start
  while (end < shorter && one.at(-1 - end) === other.at(-1 - end)) end++
  const left = one.slice(start, one.length - end)
  const right = other.slice(start, other.length - end)
  if (left.length <= 1 && right.length <= 1) return left !== right
  return left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0]
}
