import {isoDay} from '../model/day.ts'
import {isDefined} from '../model/quantity.ts'
import type {SpeciesSeasonResult} from '../model/results.ts'
import {activityDensity} from './activity-density.ts'
import type {Analysis} from './analysis.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, words} from './counted.ts'
import {short} from './curves.ts'
import type {Parts} from './parts.ts'
import {addToUnit, type UnitCatches} from './sampling-units.ts'
import type {ScopeCatch} from './scope-catch.ts'
import type {RoundInUse} from './season-rounds.ts'

/** With fewer animals than these, the rounds of a catch say little of a season. Common practice, no source. */
const leastIndividuals = 10

/** Common species that are listed. */
const mostSpecies = 15

interface InRound {
  individuals: number
  readonly caught: UnitCatches
}

/** First, last and highest round of the common species of a scope. A round is all that a pitfall catch can tell. */
export function speciesSeasons(
  {scope, speciesOf}: ScopeCatch,
  {catches, rounds, unit, confidence}: Analysis,
  parts: Parts
): SpeciesSeasonResult[] {
  const species = new Map<string, Map<RoundInUse, InRound>>()
  for (const each of catches) {
    const name = each.round === undefined ? undefined : speciesOf(each)
    if (name === undefined || each.round === undefined) continue
    const own = species.get(name) ?? new Map<RoundInUse, InRound>()
    species.set(name, own)
    const here: InRound = own.get(each.round) ?? {individuals: 0, caught: new Map()}
    own.set(each.round, here)
    here.individuals += each.count
    addToUnit(here.caught, each, unit)
  }
  const totals = [...species].map(([taxon, own]) => {
    return {taxon, own, total: [...own.values()].reduce((sum, {individuals}) => sum + individuals, 0)}
  })
  return totals
    .filter(({total}) => total >= leastIndividuals)
    .sort((a, b) => b.total - a.total || codeUnitOrder(a.taxon, b.taxon))
    .slice(0, mostSpecies)
    .map(({taxon, own, total}) => {
      const where = `${taxon}, ${scope.label}`
      const inRound = (round: RoundInUse) => {
        const {individuals, caught} = own.get(round) ?? {individuals: 0, caught: new Map()}
        const here = `${where}, round ${round.id}`
        return {
          round: round.id,
          ...(round.firstOpened !== undefined && {opened: isoDay(round.firstOpened)}),
          collected: isoDay(round.lastCollected),
          individuals: counted(`Individuals, ${here}`, individuals, words.individuals),
          rate: activityDensity(`Activity-density, ${here}`, caught, parts.ofRound(round).units, confidence)
        }
      }
      const all = rounds.rounds.map(inRound)
      const caught = all.filter((_, index) => own.has(rounds.rounds[index]!))
      const rateOf = ({rate}: (typeof all)[number]) => (isDefined(rate) ? rate.value : 0)
      return {
        taxon,
        individuals: counted(`Individuals in the rates, ${where}`, total, words.individuals),
        rounds: counted(`Rounds in which it was caught, ${where}`, caught.length, words.rounds),
        first: caught[0]!,
        last: caught.at(-1)!,
        highest: caught.reduce((highest, each) => (rateOf(each) > rateOf(highest) ? each : highest)),
        rates: all.map(({rate}) => (isDefined(rate) ? short(rate.value) : null))
      }
    })
}
