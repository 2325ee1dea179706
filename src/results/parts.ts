import type {Analysis} from './analysis.ts'
import {groupBy} from './group-by.ts'
import {type UnitEffort, unitEfforts} from './sampling-units.ts'
import type {CatchInUse, ExposureInUse} from './season-records.ts'
import type {RoundInUse} from './season-rounds.ts'
import type {HabitatInUse, SiteInUse, TrapInUse} from './study-area.ts'

/** A part of the study whose effort and catch are summed: all of it, a habitat, site or trap, in all rounds or one. */
export interface Part {
  /** Ends every label: 'whole study', or the name of the habitat, site, trap or round. */
  readonly where: string
  readonly traps: readonly TrapInUse[]
  readonly round: RoundInUse | undefined
  readonly exposures: readonly ExposureInUse[]
  /** Summed over what this part does not tell apart. */
  readonly catches: readonly CatchInUse[]
  readonly units: ReadonlyMap<number, UnitEffort>
}

export interface Parts {
  readonly study: Part
  readonly ofHabitat: (habitat: HabitatInUse) => Part
  readonly ofSite: (site: SiteInUse) => Part
  readonly ofTrap: (trap: TrapInUse) => Part
  readonly ofRound: (round: RoundInUse) => Part
  readonly ofHabitatInRound: (habitat: HabitatInUse, round: RoundInUse) => Part
}

export function partsOf(analysis: Analysis): Parts {
  const {area, exposures, catches, summed, unit} = analysis
  type Content = Pick<Part, 'where' | 'traps' | 'exposures' | 'catches'>
  const part = (content: Content, round?: RoundInUse): Part => {
    return {...content, round, units: unitEfforts(content.exposures, unit)}
  }
  const habitatExposures = groupBy(exposures, ({trap}) => trap.site.habitat)
  const habitatCatches = groupBy(summed, ({site}) => site.habitat)
  const habitatTraps = groupBy(area.traps, ({site}) => site.habitat)
  const siteExposures = groupBy(exposures, ({trap}) => trap.site)
  const siteCatches = groupBy(summed, ({site}) => site)
  const siteTraps = groupBy(area.traps, ({site}) => site)
  const trapExposures = groupBy(exposures, ({trap}) => trap)
  const trapCatches = groupBy(catches, ({trap}) => trap)
  const roundExposures = groupBy(exposures, ({round}) => round)
  const roundCatches = groupBy(catches, ({round}) => round)
  const habitats = new Map(
    area.habitats.map((habitat) => [
      habitat,
      part({
        where: habitat.label,
        traps: habitatTraps.get(habitat) ?? [],
        exposures: habitatExposures.get(habitat) ?? [],
        catches: habitatCatches.get(habitat) ?? []
      })
    ])
  )
  const sites = new Map(
    area.sites.map((site) => [
      site,
      part({
        where: site.name,
        traps: siteTraps.get(site) ?? [],
        exposures: siteExposures.get(site) ?? [],
        catches: siteCatches.get(site) ?? []
      })
    ])
  )
  const rounds = new Map(
    analysis.rounds.rounds.map((round) => {
      const inRound = {exposures: roundExposures.get(round) ?? [], catches: roundCatches.get(round) ?? []}
      const exposed = groupBy(inRound.exposures, ({trap}) => trap.site.habitat)
      const caught = groupBy(inRound.catches, ({site}) => site.habitat)
      const whole = part({where: `round ${round.id}`, traps: area.traps, ...inRound}, round)
      const byHabitat = new Map(
        area.habitats.map((habitat) => [
          habitat,
          part(
            {
              where: `${habitat.label}, round ${round.id}`,
              traps: habitatTraps.get(habitat) ?? [],
              exposures: exposed.get(habitat) ?? [],
              catches: caught.get(habitat) ?? []
            },
            round
          )
        ])
      )
      return [round, {whole, byHabitat}] as const
    })
  )
  return {
    study: part({where: 'whole study', traps: area.traps, exposures, catches: summed}),
    ofHabitat: (habitat) => habitats.get(habitat)!,
    ofSite: (site) => sites.get(site)!,
    ofTrap: (trap) =>
      part({
        where: `trap ${trap.id}`,
        traps: [trap],
        exposures: trapExposures.get(trap) ?? [],
        catches: trapCatches.get(trap) ?? []
      }),
    ofRound: (round) => rounds.get(round)!.whole,
    ofHabitatInRound: (habitat, round) => rounds.get(round)!.byHabitat.get(habitat)!
  }
}
