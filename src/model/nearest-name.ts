import {distance} from 'fastest-levenshtein'

/**
 * The name that was probably meant: the closest of the known ones, if it is close enough (one slip in four
 * letters) and no other is as close. Ties are no help to anybody, so they give nothing.
 */
export function nearestName(written: string, known: Iterable<string>): string | undefined {
  const target = written.toLowerCase()
  let best: string | undefined
  let smallest = Math.max(1, Math.floor(written.length / 4)) + 1
  let tied = false
  for (const name of known) {
    if (name === written) continue
    if (Math.abs(name.length - written.length) >= smallest + 1) continue
    const slips = distance(target, name.toLowerCase())
    if (slips < smallest) {
      best = name
      smallest = slips
      tied = false
    } else if (slips === smallest && best !== undefined) {
      tied = true
    }
  }
  return tied ? undefined : best
}
