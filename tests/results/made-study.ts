import type {Settings} from '../../src/model/settings.ts'
import type {Tiny} from './tiny-study.ts'

/** Catch of every site of a habitat: individuals by species, the same species at the same place of every list. */
export type MadeHabitats = Readonly<Record<string, readonly (readonly number[])[]>>

export interface MadeOptions {
  readonly settings?: Settings
  /** Rounds of 14 nights, from 1 May 2026. */
  readonly rounds?: number
  /** Block of a site by its number within the habitat. */
  readonly blockOf?: (habitat: string, index: number) => string | undefined
  /** Rounds (from 0) in which the sites of a habitat stood open; all where absent. */
  readonly roundsOf?: (habitat: string) => readonly number[]
}

const firstDay = Date.UTC(2026, 4, 1)
const dayNumber = (nights: number) => new Date(firstDay + nights * 86_400_000).toISOString().slice(0, 10)

export const roundDay = (round: number) => dayNumber(14 * (round + 1))

export function speciesName(index: number): string {
  const letters = 'abcdefghijklmnopqrstuvwxyz'
  return `Genus species${letters[Math.floor(index / 26)]}${letters[index % 26]}`
}

/** A study with one trap a site, everything caught in the first round of its habitat. */
export function madeStudy(habitats: MadeHabitats, options: MadeOptions = {}): Tiny {
  const {settings = {}, rounds = 2, blockOf, roundsOf} = options
  const all = Array.from({length: rounds}, (_, round) => round)
  const sites = Object.entries(habitats).flatMap(([habitat, own]) =>
    own.map((counts, index) => ({
      id: `${habitat}${index + 1}`,
      habitat,
      counts,
      block: blockOf?.(habitat, index),
      open: roundsOf?.(habitat) ?? all
    }))
  )
  return {
    settings: {no_catch_rows: 'empty', ...settings},
    sites: Object.fromEntries(
      sites.map(({id, habitat, block}) => [id, {habitat, ...(block !== undefined && {block})}])
    ),
    traps: Object.fromEntries(sites.map(({id}) => [`${id}-1`, id])),
    visits: sites.flatMap(({id, open}) =>
      open.map((round) => {
        return [`${id}-1`, dayNumber(14 * round), roundDay(round), {round: `R${round + 1}`}] as const
      })
    ),
    catch: sites.flatMap(({id, counts, open}) =>
      counts.flatMap((count, species) => {
        if (count === 0 || open.length === 0) return []
        return [[`${id}-1`, roundDay(open[0]!), speciesName(species), count] as const]
      })
    )
  }
}

/** Three sites of each of two habitats, one of them with half the animals of the other. */
export const twoHabitats: MadeHabitats = {
  wood: [
    [40, 12, 5, 2, 1, 0],
    [52, 9, 4, 2, 0, 1],
    [47, 15, 6, 1, 1, 0]
  ],
  meadow: [
    [3, 20, 0, 9, 2, 1],
    [2, 26, 1, 12, 1, 0],
    [5, 22, 0, 7, 0, 2]
  ]
}
