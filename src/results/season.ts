import {isoDay, partsOf as partsOfDay} from '../model/day.ts'
import type {RoundResult} from '../model/results.ts'
import type {Study} from '../model/study.ts'
import type {Analysis} from './analysis.ts'
import {catchResult} from './catch.ts'
import {effortResult} from './effort.ts'
import type {Parts} from './parts.ts'

/** The rounds in their order, each with the habitats side by side. */
export function roundResults(analysis: Analysis, parts: Parts): RoundResult[] {
  return analysis.rounds.rounds.map((round) => {
    const part = parts.ofRound(round)
    return {
      id: round.id,
      ...(round.firstOpened !== undefined && {firstOpened: isoDay(round.firstOpened)}),
      lastCollected: isoDay(round.lastCollected),
      effort: effortResult(part, analysis.planned),
      catch: catchResult(part, analysis),
      habitats: analysis.area.habitats.map((habitat) => {
        const here = parts.ofHabitatInRound(habitat, round)
        const {id, label, style} = habitat
        return {
          id,
          label,
          style,
          effort: effortResult(here, analysis.planned),
          catch: catchResult(here, analysis)
        }
      })
    }
  })
}

/** First opening and last collection among exposures, as ISO days. */
export function seasonWindow(exposures: Study['exposures']): {firstOpened?: string; lastCollected?: string} {
  let first: number | undefined
  let last: number | undefined
  for (const {opened, collected} of exposures) {
    if (opened !== undefined) first = Math.min(first ?? opened.day, opened.day)
    last = Math.max(last ?? collected.day, collected.day)
  }
  return {
    ...(first !== undefined && {firstOpened: isoDay(first)}),
    ...(last !== undefined && {lastCollected: isoDay(last)})
  }
}

/** Year of the season, or '2025 to 2026' where it spans several. */
export function seasonWords({exposures, settings}: Study): string {
  const years = new Set<number>()
  for (const {opened, collected} of exposures) {
    if (opened !== undefined) years.add(partsOfDay(opened.day).year)
    years.add(partsOfDay(collected.day).year)
  }
  for (const day of years.size > 0 ? [] : [settings.season?.start, settings.season?.end]) {
    if (day !== undefined) years.add(Number(day.slice(0, 4)))
  }
  if (years.size === 0) return 'season not recorded'
  const first = Math.min(...years)
  const last = Math.max(...years)
  return first === last ? `${first}` : `${first} to ${last}`
}
