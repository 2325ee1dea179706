import type {MakeUpResult} from '../model/results.ts'
import type {Taxon} from '../model/study.ts'
import type {Analysis} from './analysis.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, words} from './counted.ts'
import type {Part, Parts} from './parts.ts'
import type {UnitKind} from './sampling-units.ts'
import type {Scope} from './scopes.ts'
import {addToCounts, totalOf, type UnitCounts, unitShare} from './unit-share.ts'

/** Upper ends of the classes of body length in millimetres. Common practice, no source. */
const lengthClasses = [5, 10, 15, 20]

/** Guilds of a scope's catch, the most numerous first. */
export function guilds(scope: Scope, analysis: Analysis, parts: Parts): MakeUpResult {
  return makeUp('guild', scope, analysis, parts, ({guild}) => guild, codeUnitOrder)
}

/** Classes of body length of a scope's catch, the smallest first. */
export function bodySizes(scope: Scope, analysis: Analysis, parts: Parts): MakeUpResult {
  const names = lengthClasses.map((upper, index) => {
    const lower = lengthClasses[index - 1]
    return lower === undefined ? `under ${upper} mm` : `${lower} to under ${upper} mm`
  })
  const all = [...names, `${lengthClasses.at(-1)} mm and more`]
  const classOf = ({bodyLengthMm}: Taxon): string | undefined => {
    if (bodyLengthMm === undefined) return undefined
    const index = lengthClasses.findIndex((upper) => bodyLengthMm < upper)
    return all.at(index)
  }
  return makeUp('body length', scope, analysis, parts, classOf, (a, b) => all.indexOf(a) - all.indexOf(b))
}

/** Animals by class, those of any class by sampling unit, and how many have none on record. */
interface Tally {
  readonly classes: ReadonlyMap<string, {readonly caught: UnitCounts; readonly names: Set<string>}>
  readonly known: UnitCounts
  readonly unknown: number
}

type ClassOf = (taxon: Taxon) => string | undefined

function tallyOf({catches}: Part, scope: Scope, unit: UnitKind, classOf: ClassOf): Tally {
  const classes = new Map<string, {readonly caught: UnitCounts; readonly names: Set<string>}>()
  const known: UnitCounts = new Map()
  let unknown = 0
  for (const each of catches) {
    const {name, lifeStage, count, inRates} = each
    if (!inRates || !scope.holds(name, lifeStage)) continue
    const own = name.taxon && classOf(name.taxon)
    if (own === undefined) {
      unknown += count
      continue
    }
    const here = classes.get(own) ?? {caught: new Map(), names: new Set<string>()}
    classes.set(own, here)
    addToCounts(here.caught, each, unit)
    addToCounts(known, each, unit)
    here.names.add(name.name)
  }
  return {classes, known, unknown}
}

function makeUp(
  what: string,
  scope: Scope,
  {area, unit, confidence}: Analysis,
  parts: Parts,
  classOf: ClassOf,
  order: (first: string, second: string) => number
): MakeUpResult {
  const whole = tallyOf(parts.study, scope, unit, classOf)
  const names = [...whole.classes.keys()].sort(order)
  const lines = ({classes, known}: Tally, where: string): MakeUpResult['study'] =>
    names.map((name) => {
      const own = classes.get(name)
      const here = `${what} ${name}, ${scope.label}, ${where}`
      return {
        class: name,
        individuals: counted(`Individuals, ${here}`, totalOf(own?.caught), words.individuals),
        share: unitShare(
          `Share of individuals, ${here}`,
          own?.caught,
          known,
          confidence,
          `no animal caught there has a ${what} on record`
        ),
        species: counted(`Names, ${here}`, own?.names.size ?? 0, words.names)
      }
    })
  const study = lines(whole, 'whole study')
  return {
    recorded: names.length > 0,
    known: counted(
      `Individuals with a ${what} on record, ${scope.label}`,
      totalOf(whole.known),
      words.individuals
    ),
    unknown: counted(
      `Individuals without a ${what} on record, ${scope.label}`,
      whole.unknown,
      words.individuals
    ),
    classes: names,
    study,
    habitats: area.habitats.map((habitat) => {
      const {id, label, style} = habitat
      return {
        id,
        label,
        style,
        classes: lines(tallyOf(parts.ofHabitat(habitat), scope, unit, classOf), label)
      }
    })
  }
}
