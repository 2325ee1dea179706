import {matchCatch} from '../model/catch-matching.ts'
import type {CatchRecord, Exposure} from '../model/study.ts'
import type {CatchOnRecord} from './exposure-effort.ts'

/** Exposures that were tipped together (one, unless pooled in the field), and the catch recorded from them. */
export interface Collection {
  readonly exposures: readonly Exposure[]
  readonly records: readonly CatchRecord[]
  readonly animals: number
  /** Smallest part of its sample that was sorted, above 0 and up to 1. */
  readonly fraction: number
}

/** All collections with a catch record, and the records that no exposure accounts for. */
export interface Collections {
  readonly collections: readonly Collection[]
  readonly unmatched: readonly CatchRecord[]
}

export function collectionsOf(
  exposures: readonly Exposure[],
  records: readonly CatchRecord[],
  siteOfTrap: (trapId: string) => string | undefined
): Collections {
  const {ofExposure, pooled, unmatched} = matchCatch(exposures, records, siteOfTrap)
  const collections: Collection[] = []
  for (const exposure of exposures) {
    const own = ofExposure.get(exposure.row)
    if (own !== undefined) collections.push(collection([exposure], own))
  }
  // Records pooled from one site and round share one list of exposures.
  const tipped = new Map<readonly Exposure[], CatchRecord[]>()
  for (const {record, exposures: together} of pooled) {
    const others = tipped.get(together)
    if (others === undefined) tipped.set(together, [record])
    else others.push(record)
  }
  for (const [together, pool] of tipped) collections.push(collection(together, pool))
  return {collections, unmatched}
}

/** What the collections that an exposure took part in say of its catch. */
export function catchOnRecord(exposure: Exposure, collections: readonly Collection[]): CatchOnRecord {
  const withAnimals = collections.filter(({animals}) => animals > 0)
  return {
    rows: collections.length > 0,
    animals: withAnimals.length > 0,
    // One empty cup among several pooled ones contradicts nothing.
    contradicted:
      exposure.sample === 'empty' && withAnimals.some(({exposures}) => exposures.every(isCalledEmpty))
  }
}

function isCalledEmpty({sample}: Exposure): boolean {
  return sample === 'empty'
}

function collection(exposures: readonly Exposure[], records: readonly CatchRecord[]): Collection {
  let animals = 0
  let fraction = 1
  for (const {count, sampleFraction} of records) {
    animals += count
    fraction = Math.min(fraction, sampleFraction)
  }
  return {exposures, records, animals, fraction}
}
