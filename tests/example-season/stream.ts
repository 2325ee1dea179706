import {uniformFloat64} from 'pure-rand/distribution/uniformFloat64'
import {xoroshiro128plus} from 'pure-rand/generator/xoroshiro128plus'

const seed = 20250414

/** Draws from 0 (included) to 1 (excluded). */
export type Stream = () => number

/**
 * A random stream of its own for every name, so that a new taxon or trap changes nobody else's numbers. All
 * arithmetic of the season is +, -, *, / and square root, which every machine computes alike.
 */
export function stream(name: string): Stream {
  const generator = xoroshiro128plus(seed ^ hashOf(name))
  return () => uniformFloat64(generator)
}

/** FNV-1a, 32 bits. */
function hashOf(name: string): number {
  let hash = 0x811c9dc5
  for (let at = 0; at < name.length; at++) hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193)
  return hash
}
