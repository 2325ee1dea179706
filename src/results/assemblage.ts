import {isDefined, type Measure, type MeasureKind, type Quantity} from '../model/quantity.ts'
import type {AssemblageResult} from '../model/results.ts'
import {bergerParker} from '../statistics/berger-parker.ts'
import {chao1} from '../statistics/chao1.ts'
import {coverage} from '../statistics/coverage.ts'
import {curveSizes} from '../statistics/curve-sizes.ts'
import {type AbundanceCounts, frequencyCounts} from '../statistics/frequency-counts.ts'
import {giniSimpson} from '../statistics/gini-simpson.ts'
import {hillAsymptotic} from '../statistics/hill-asymptotic.ts'
import {hillObserved} from '../statistics/hill-observed.ts'
import {pielou} from '../statistics/pielou.ts'
import {rarefactionAndExtrapolation} from '../statistics/rarefaction-and-extrapolation.ts'
import {shannon} from '../statistics/shannon.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, trapNights, words} from './counted.ts'
import type {Part} from './parts.ts'
import {sitesThatCount} from './sampling-units.ts'

/** Whose catch it is. */
export interface Assemblage {
  readonly of: AssemblageResult['of']
  readonly id: string
  readonly label: string
  readonly style: number
  readonly part: Part
  /** Name of the scope, for labels. */
  readonly scope: string
}

/** Raw integer counts in the rates, by species, and by every name including those left out. */
export interface SpeciesCounts {
  readonly species: ReadonlyMap<string, number>
  readonly allNames: ReadonlyMap<string, number>
}

const orders = [0, 1, 2] as const

/** Diversity of one assemblage. Curves and ranks of sites are left out to keep results.json small. */
export function assemblageResult(
  {of, id, label, style, part, scope}: Assemblage,
  counts: SpeciesCounts
): AssemblageResult {
  const sample = frequencyCounts([...counts.species.values()])
  const everything = frequencyCounts([...counts.allNames.values()])
  const net = [...part.units.values()].reduce((sum, unit) => sum + unit.net, 0)
  const say = (what: string) => `${what}, ${scope}, ${label}`
  const species = (what: string, value: number) => counted(say(what), value, words.species)
  const estimate = (what: string, quantity: Quantity) =>
    measured(say(what), 'estimate', quantity, words.species)
  const diversity = (what: string, quantity: Quantity) =>
    measured(say(what), 'diversity', quantity, words.effective)
  const index = (what: string, quantity: Quantity) => measured(say(what), 'diversity', quantity)
  const asymptotic = hillAsymptotic(sample)
  const whole = of !== 'site'
  return {
    of,
    id,
    label,
    style,
    sites: counted(say('Sites with trap-nights that count'), sitesThatCount(part.exposures), words.sites),
    net: trapNights(say('Trap-nights that count'), net),
    individuals: counted(say('Individuals in diversity'), sample.size, words.individuals),
    species: species('Species caught', sample.species),
    singletons: species('Species caught once (singletons)', sample.singletons),
    doubletons: species('Species caught twice (doubletons)', sample.doubletons),
    coverage: measured(say('Sample coverage'), 'coverage', coverage(sample)),
    chao1: estimate('Lower bound of the number of species (Chao1)', chao1(sample)),
    hill: {
      q0: {
        observed: diversity('Species richness as observed (q = 0)', hillObserved(sample, 0)),
        asymptotic: diversity('Species richness, asymptotic estimate (q = 0)', asymptotic.q0)
      },
      q1: {
        observed: diversity('Diversity of common species as observed (q = 1)', hillObserved(sample, 1)),
        asymptotic: diversity('Diversity of common species, asymptotic estimate (q = 1)', asymptotic.q1)
      },
      q2: {
        observed: diversity('Diversity of dominant species as observed (q = 2)', hillObserved(sample, 2)),
        asymptotic: diversity('Diversity of dominant species, asymptotic estimate (q = 2)', asymptotic.q2)
      }
    },
    shannon: index('Shannon entropy, natural logarithm', shannon(sample)),
    giniSimpson: index('Gini-Simpson index', giniSimpson(sample)),
    pielou: index('Pielou evenness J', pielou(sample)),
    bergerParker: index('Berger-Parker dominance', bergerParker(sample)),
    allNames: {
      species: species('Species with every name counted', everything.species),
      chao1: estimate(
        'Lower bound of the number of species with every name counted (Chao1)',
        chao1(everything)
      )
    },
    curves: whole ? curvesOf(sample) : [],
    ranks: whole ? ranksOf(counts.species, sample.size) : []
  }
}

function measured(
  label: string,
  kind: MeasureKind,
  quantity: Quantity,
  unit?: readonly [string, string]
): Measure {
  return {label, kind, ...(unit && {unit}), ...quantity}
}

function curvesOf(sample: AbundanceCounts): AssemblageResult['curves'] {
  const sizes = curveSizes(sample.size)
  return orders.map((order) => ({
    order,
    points: sizes.flatMap((size) => {
      const expected = rarefactionAndExtrapolation(sample, order, size)
      return isDefined(expected) ? [{size, value: expected.value, beyond: size > sample.size}] : []
    })
  }))
}

function ranksOf(species: ReadonlyMap<string, number>, individuals: number): AssemblageResult['ranks'] {
  return [...species]
    .sort(([a, first], [b, second]) => second - first || codeUnitOrder(a, b))
    .map(([taxon, count], index) => ({
      rank: index + 1,
      taxon,
      individuals: count,
      share: count / individuals
    }))
}
