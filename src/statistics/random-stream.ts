import {uniformFloat64} from 'pure-rand/distribution/uniformFloat64'
import {uniformInt} from 'pure-rand/distribution/uniformInt'
import {xoroshiro128plusFromState} from 'pure-rand/generator/xoroshiro128plus'
import type {JumpableRandomGenerator} from 'pure-rand/types/JumpableRandomGenerator'

/** A sequence of random numbers that is the same on every machine and in every split of the work. */
export interface RandomStream {
  /** A number from 0 (included) to 1 (excluded), a multiple of 2^-53. */
  uniform(): number
  /** A whole number from 0 to below - 1, each equally likely. */
  integer(below: number): number
}

/** The streams of one quantity: replicate r has its own, whoever computes it and in whatever order. */
export interface ReplicatedStream extends RandomStream {
  /**
   * The streams of replicates first, first + 1, ... end - 1. Each starts 2^64 draws after the one before, so that
   * they never meet; replicate 0 starts where this stream itself starts.
   */
  replicates(first: number, end: number): Generator<RandomStream, void, undefined>
}

/**
 * The random stream of one quantity of a study.
 *
 * The name takes part so that adding a habitat or a statistic leaves the draws of all others as they were. The
 * state of the generator (xoroshiro128+, Blackman & Vigna 2021, ACM Trans. Math. Softw. 47:36) is two outputs of
 * SplitMix64 (Steele, Lea & Flood 2014, OOPSLA) started at the 64-bit FNV-1a hash of the text 'seed/name' in
 * UTF-16 code units, low byte first.
 *
 * seed: a safe integer, the study's. name: for example 'coverage curve/beech wood'.
 */
export function randomStream(seed: number, name: string): ReplicatedStream {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`the seed must be a whole number, not ${seed}`)
  const start = fnv1a64(`${seed}/${name}`)
  const words = [splitMix64(start + GOLDEN), splitMix64(start + 2n * GOLDEN)]
  const state = words.flatMap((word) => [Number(word >> 32n) | 0, Number(word & 0xffffffffn) | 0])
  const base = xoroshiro128plusFromState(state)
  return {
    ...streamOf(base.clone()),
    *replicates(first, end) {
      const generator = base.clone()
      for (let r = 0; r < first; r++) generator.jump()
      for (let r = first; r < end; r++) {
        yield streamOf(generator.clone())
        generator.jump()
      }
    }
  }
}

function streamOf(generator: JumpableRandomGenerator): RandomStream {
  return {
    uniform: () => uniformFloat64(generator),
    integer: (below) => uniformInt(generator, 0, below - 1)
  }
}

const GOLDEN = 0x9e3779b97f4a7c15n

function fnv1a64(text: string): bigint {
  let hash = 0xcbf29ce484222325n
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i)
    for (const byte of [unit & 0xff, unit >> 8])
      hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n)
  }
  return hash
}

function splitMix64(state: bigint): bigint {
  let z = BigInt.asUintN(64, state)
  z = BigInt.asUintN(64, (z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n)
  z = BigInt.asUintN(64, (z ^ (z >> 27n)) * 0x94d049bb133111ebn)
  return z ^ (z >> 31n)
}
