import type {Analysis} from './analysis.ts'
import {confoundedWithHabitat} from './confounding.ts'
import type {Parts} from './parts.ts'
import {type UnitEffort, unitEfforts} from './sampling-units.ts'
import type {RoundInUse} from './season-rounds.ts'
import type {HabitatInUse, SiteInUse} from './study-area.ts'

/** A sampling unit under the name that a report gives it. */
export interface UnitInUse {
  readonly index: number
  readonly id: string
  readonly label: string
  readonly site: SiteInUse
  readonly effort: UnitEffort
}

/** What the design lets stand side by side, and why not more. */
export interface Comparable {
  readonly supported: boolean
  /** Each completes 'not compared, because ...'. */
  readonly reasons: readonly string[]
  /** Whole sentences. */
  readonly notes: readonly string[]
  readonly habitats: readonly HabitatInUse[]
  readonly leftOut: readonly {readonly habitat: HabitatInUse; readonly reason: string}[]
  readonly rounds: readonly RoundInUse[]
  readonly roundsLeftOut: readonly RoundInUse[]
  /** Sampling units of the habitats compared with effort in the rounds compared, habitat by habitat. */
  readonly units: readonly UnitInUse[]
  /** Block of each unit, where blocks take part. */
  readonly blocks: readonly string[] | undefined
}

/**
 * Which habitats can be compared in which rounds: those with two sampling units or more, in the rounds that all of
 * them share, if nothing else differs in line with habitat. One site says nothing of a habitat (Hurlbert 1984).
 */
export function comparableHabitats(analysis: Analysis, parts: Parts): Comparable {
  const {area, rounds, unit} = analysis
  const replicated = area.habitats.filter((habitat) => parts.ofHabitat(habitat).units.size > 1)
  const shared = rounds.rounds.filter((round) => {
    return (
      replicated.length > 0 && replicated.every((each) => parts.ofHabitatInRound(each, round).units.size > 0)
    )
  })
  const unitsInShared = unitsIn(analysis, new Set(shared))
  const enough = replicated.filter((habitat) => unitsOf(habitat, unitsInShared).length > 1)
  const leftOut = area.habitats
    .filter((habitat) => !enough.includes(habitat))
    .map((habitat) => {
      const all = parts.ofHabitat(habitat).units.size
      const reason = all > 1 ? `it has fewer than two ${unit}s in the rounds shared` : fewWords(all, unit)
      return {habitat, reason}
    })
  const units = enough.flatMap((habitat) => unitsOf(habitat, unitsInShared))
  const {blocks, reason: blockReason, note: blockNote} = blocksOf(units)
  const confounded = confoundedWithHabitat(analysis, new Set(shared), enough)
  const reasons = [
    ...(area.habitats.length > 1 && unitsIn(analysis, undefined).length === 0
      ? ['no trap-nights count in any habitat']
      : tooFew(area.habitats, replicated, enough, shared, unit)),
    ...(enough.length < 2
      ? []
      : confounded.map(({what, detail}) => {
          return `the ${what} differs in line with habitat (${detail}), so that its effect cannot be told from that of the habitat`
        })),
    ...(enough.length > 1 && blockReason !== undefined ? [blockReason] : [])
  ]
  const supported = reasons.length === 0
  const roundsLeftOut = rounds.rounds.filter((round) => !shared.includes(round))
  return {
    supported,
    reasons,
    notes: supported
      ? [
          ...roundNotes(shared, roundsLeftOut),
          ...leftOut.map(({habitat: {label}, reason}) => `Not compared: ${label}, because ${reason}.`),
          ...unitNotes(analysis),
          ...(blockNote === undefined ? [] : [blockNote])
        ]
      : [],
    habitats: enough,
    leftOut,
    rounds: shared,
    roundsLeftOut,
    units,
    blocks
  }
}

/** All sampling units with effort in some rounds, or in all. */
export function unitsIn(
  {area, exposures, unit}: Analysis,
  rounds: ReadonlySet<RoundInUse> | undefined
): readonly UnitInUse[] {
  const chosen = rounds === undefined ? exposures : exposures.filter(({round}) => rounds.has(round))
  const efforts = unitEfforts(chosen, unit)
  const all = unit === 'trap' ? area.traps : area.sites
  return all.flatMap((each) => {
    const effort = efforts.get(each.index)
    if (effort === undefined) return []
    const site = 'site' in each ? each.site : each
    return [{index: each.index, id: each.id, label: 'site' in each ? each.id : each.name, site, effort}]
  })
}

function unitsOf(habitat: HabitatInUse, units: readonly UnitInUse[]): readonly UnitInUse[] {
  return units.filter(({site}) => site.habitat === habitat)
}

function fewWords(units: number, unit: string): string {
  return units === 0 ? 'none of its trap-nights count' : `it has a single ${unit}`
}

function tooFew(
  all: readonly HabitatInUse[],
  replicated: readonly HabitatInUse[],
  enough: readonly HabitatInUse[],
  shared: readonly RoundInUse[],
  unit: string
): string[] {
  if (enough.length > 1) return []
  if (all.length < 2) return ['there are fewer than two habitats']
  const unclear = 'so that nothing tells what is due to the habitat and what to the place'
  const [only] = replicated
  if (only === undefined) return [`no habitat has more than one ${unit}, ${unclear}`]
  if (replicated.length === 1)
    return [`only one habitat (${only.label}) has more than one ${unit}, ${unclear}`]
  if (shared.length === 0) {
    return ['no round was sampled in every habitat, so that habitat and time of year cannot be told apart']
  }
  return [`in the rounds that the habitats share, fewer than two of them have more than one ${unit}`]
}

function roundNotes(shared: readonly RoundInUse[], leftOut: readonly RoundInUse[]): string[] {
  if (leftOut.length === 0) return []
  const names = (rounds: readonly RoundInUse[]) => rounds.map(({id}) => id).join(', ')
  return [
    `The habitats were not sampled in the same periods, so only the rounds that they share are compared: ${names(shared)}. Left out: ${names(leftOut)}.`
  ]
}

function unitNotes({unit, unitDecidedBy}: Analysis): string[] {
  if (unit === 'site') return []
  return [
    `The sampling unit is the trap, though traps of one site share their surroundings. Basis of this choice: ${unitDecidedBy}.`
  ]
}

interface BlocksInUse {
  readonly blocks: readonly string[] | undefined
  /** Why blocks forbid a comparison. */
  readonly reason?: string
  readonly note?: string
}

/** Blocks take part where every unit has one and there are several of them. */
function blocksOf(units: readonly UnitInUse[]): BlocksInUse {
  const blocks = units.map(({site}) => site.record.block)
  const known = blocks.filter((block) => block !== undefined)
  const names = new Set(known)
  if (names.size === 0) return {blocks: undefined}
  if (known.length < blocks.length) {
    return {
      blocks: undefined,
      note: 'Blocks are on record for some of the sites only, so that the comparison does without them.'
    }
  }
  const habitatsIn = [...names].map((name) => {
    return new Set(units.filter(({site}) => site.record.block === name).map(({site}) => site.habitat)).size
  })
  if (habitatsIn.every((count) => count === 1)) {
    return {
      blocks: undefined,
      reason: 'every block holds one habitat only, so that habitat and place cannot be told apart'
    }
  }
  return names.size === 1
    ? {blocks: undefined}
    : {blocks: known, note: `Habitats are compared within blocks, of which there are ${names.size}.`}
}
