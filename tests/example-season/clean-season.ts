import {carabids} from './carabids.ts'
import {negativeBinomial} from './negative-binomial.ts'
import {type Habitat, sites} from './places.ts'
import {nightsPerRound, type Round, rounds, seasonDay} from './season.ts'
import type {CatchRow, Season, Visit} from './season-records.ts'
import {spiders} from './spiders.ts'
import {type Stream, stream} from './stream.ts'
import {seasonCurves, type TaxonSpec} from './taxon.ts'
import {type Trap, traps} from './traps.ts'

const habitatOfSite = new Map<string, Habitat>(sites.map((site) => [site.site_id, site.habitat]))
const blockOfSite = new Map<string, string>(sites.map((site) => [site.site_id, site.block]))

/** The season as it would have been had nothing gone wrong: every trap stood, every vial was sorted. */
export function cleanSeason(): Season {
  const fullness = fullnessOfTraps()
  const catchRows = [...carabids, ...spiders].flatMap((taxon) =>
    taxon.stray ? strayRows(taxon) : residentRows(taxon, fullness)
  )
  const caught = new Set(catchRows.map((row) => `${row.trap_id} ${row.round}`))
  const visits = rounds.flatMap((round) => traps.map((trap) => visitOf(trap, round, caught)))
  return {visits, catch: catchRows}
}

/** How well a trap caught in a round, all kinds alike: shade, wind, a grass tuft leaning over the rim. */
function fullnessOfTraps(): ReadonlyMap<string, number> {
  return new Map(
    traps.flatMap((trap) => {
      const draw = stream(`fullness of ${trap.trap_id}`)
      const ofTrap = 0.7 + 0.6 * draw()
      return rounds.map((round) => {
        // One collection in thirty or so is nearly empty, as in the field.
        const luck = draw() < 0.03 ? 0.04 : 0.5 + 1.06 * draw()
        return [`${trap.trap_id} ${round.round}`, ofTrap * luck] as const
      })
    })
  )
}

function residentRows(taxon: TaxonSpec, fullness: ReadonlyMap<string, number>): CatchRow[] {
  const presence = taxon.presence ?? 1
  const curve = seasonCurves[taxon.season]
  return sites.flatMap((site) => {
    const draw = stream(`${taxon.taxon} at ${site.site_id}`)
    const rate = taxon.rates[site.habitat] ?? 0
    const livesHere = draw() < presence
    const ofSite = 0.45 + 1.1 * draw()
    if (rate === 0 || !livesHere) return []
    const perNight = ((rate / presence) * ofSite) / 100
    return traps
      .filter((trap) => trap.site_id === site.site_id)
      .flatMap((trap) =>
        rounds.flatMap((round) => {
          const mean =
            perNight *
            nightsPerRound *
            (curve[round.index] ?? 0) *
            (fullness.get(`${trap.trap_id} ${round.round}`) ?? 1)
          return rowsOf(taxon, trap.trap_id, round, negativeBinomial(mean, taxon.clumping, draw), draw)
        })
      )
  })
}

/** A stray's animals are dealt out one by one, so that singletons and doubletons stay what they are meant to be. */
function strayRows(taxon: TaxonSpec): CatchRow[] {
  const {animals, sites: homes} = taxon.stray ?? {animals: 0, sites: []}
  const draw = stream(`stray ${taxon.taxon}`)
  const curve = seasonCurves[taxon.season]
  const counts = new Map<string, number>()
  for (let animal = 0; animal < animals; animal++) {
    const trapId = `${homes[animal % homes.length]}-${1 + Math.floor(draw() * 6)}`
    const key = `${trapId} ${weighted(curve, draw)}`
    counts.set(key, (counts.get(key) ?? 0) + 1)
  }
  return [...counts].flatMap(([key, count]) => {
    const [trapId = '', index] = key.split(' ')
    const round = rounds[Number(index)]
    return round ? rowsOf(taxon, trapId, round, count, draw) : []
  })
}

function weighted(weights: readonly number[], draw: Stream): number {
  let left = draw() * weights.reduce((sum, weight) => sum + weight, 0)
  const at = weights.findIndex((weight) => {
    left -= weight
    return left < 0
  })
  return at < 0 ? weights.length - 1 : at
}

/** One row, or one a sex; two samples in five of sexed kinds were not looked at so closely. */
function rowsOf(taxon: TaxonSpec, trapId: string, round: Round, count: number, draw: Stream): CatchRow[] {
  if (count === 0) return []
  const row = {trap_id: trapId, round: round.round, collected: round.collected, taxon: taxon.taxon}
  const identifiedBy = taxon.order === 'Araneae' ? 'Fern Loomweaver' : 'Hazel Underhedge'
  if (!taxon.sexed || draw() < 0.4) return [{...row, count, identified_by: identifiedBy}]
  let males = 0
  for (let animal = 0; animal < count; animal++) if (draw() < 0.6) males++
  const bySex = [
    {...row, count: count - males, sex: 'female' as const, identified_by: identifiedBy},
    {...row, count: males, sex: 'male' as const, identified_by: identifiedBy}
  ]
  return bySex.filter((part) => part.count > 0)
}

function visitOf(trap: Trap, round: Round, caught: ReadonlySet<string>): Visit {
  const draw = stream(`bench ${trap.trap_id} ${round.round}`)
  const isBarley = habitatOfSite.get(trap.site_id) === 'barley'
  // Dry air and sun cost fluid: more in July than in April, more in the open field than in the wood.
  const evaporated = 2 + Math.floor(draw() * 4) + round.index + (isBarley ? 2 : 0)
  const site = sites.findIndex((one) => one.site_id === trap.site_id)
  const upperValley = ['upper-fold', 'longacre'].includes(blockOfSite.get(trap.site_id) ?? '')
  return {
    trap_id: trap.trap_id,
    site_id: trap.site_id,
    opened: round.opened,
    collected: round.collected,
    condition: 'intact',
    sample: caught.has(`${trap.trap_id} ${round.round}`) ? 'sorted' : 'empty',
    round: round.round,
    rim: 'flush',
    fluid_left_mm: 30 - evaporated,
    cover_state: 'in place',
    collected_by: upperValley ? 'Hazel Underhedge' : 'Rowan Overbrook',
    sorted_by: site % 2 === 0 ? 'Rowan Overbrook' : 'Hazel Underhedge',
    sorted_on: seasonDay((round.index + 1) * nightsPerRound + 18 + site * 2),
    vertebrates_count: 0
  }
}
