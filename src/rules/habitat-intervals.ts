import {median} from '../statistics/median.ts'
import {type Fieldwork, grouped, type Visit} from './fieldwork.ts'

/** Ours, no source: medians further apart than this factor are unequal intervals. */
export const unequalFactor = 1.5

/** Median nights of an exposure by habitat, in the rounds that all habitats share; in all rounds where they share none. */
export function intervalsByHabitat({visits, habitats}: Fieldwork): ReadonlyMap<string, number> {
  const shared = new Set<string>()
  for (const [round, ofRound] of grouped(visits, (visit) => visit.round)) {
    if (new Set(ofRound.map(habitatOf)).size === habitats.length) shared.add(round)
  }
  return medians(shared.size === 0 ? visits : visits.filter(({round}) => shared.has(round)))
}

/** Median nights of an exposure by round and habitat. */
export function intervalsByRound({visits}: Fieldwork): ReadonlyMap<string, ReadonlyMap<string, number>> {
  return new Map(
    [...grouped(visits, ({round}) => round)].map(([round, ofRound]) => [round, medians(ofRound)])
  )
}

export function areUnequal(intervals: ReadonlyMap<string, number>): boolean {
  const nights = [...intervals.values()]
  return nights.length > 1 && Math.max(...nights) > unequalFactor * Math.min(...nights)
}

/** `oak 14, hay 7 nights`. */
export function intervalWords(intervals: ReadonlyMap<string, number>): string {
  return `${[...intervals].map(([habitat, nights]) => `${habitat} ${Number(nights.toFixed(1))}`).join(', ')} nights`
}

function medians(visits: readonly Visit[]): ReadonlyMap<string, number> {
  return new Map(
    [...grouped(visits, habitatOf)].map(([habitat, own]) => {
      const middle = median(own.map(({nights}) => nights))
      return [habitat, 'value' in middle ? middle.value : 0]
    })
  )
}

function habitatOf({at}: Visit): string {
  return at.site.habitat
}
