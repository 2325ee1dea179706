import type {Quantity} from '../model/quantity.ts'
import type {AssemblageResult} from '../model/results.ts'
import {ace} from '../statistics/ace.ts'
import {bergerParker} from '../statistics/berger-parker.ts'
import {chao1} from '../statistics/chao1.ts'
import {type AbundanceCounts, frequencyCounts} from '../statistics/frequency-counts.ts'
import {giniSimpson} from '../statistics/gini-simpson.ts'
import {pielou} from '../statistics/pielou.ts'
import {shannon} from '../statistics/shannon.ts'
import type {Analysis} from './analysis.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, measured, trapNights, words} from './counted.ts'
import {coverageCurves, pointCurves} from './curves.ts'
import {type DiversityEstimates, diversityEstimates, plainEstimates} from './diversity-estimates.ts'
import {diversityProfile} from './diversity-profile.ts'
import {estimatorResults} from './estimators.ts'
import {hillResult} from './hill.ts'
import {incidenceResult} from './incidence.ts'
import type {Occurrences} from './occasions.ts'
import type {Part} from './parts.ts'
import type {Runner} from './replicates.ts'
import {sitesThatCount} from './sampling-units.ts'

/** Whose catch it is. */
export interface Assemblage {
  readonly of: AssemblageResult['of']
  readonly id: string
  readonly label: string
  readonly style: number
  readonly part: Part
  /** Name of the scope, for labels, and its id, for the random streams. */
  readonly scope: {readonly id: string; readonly label: string}
  /** Raw integer counts in the rates, by species, and by every name including those left out. */
  readonly species: ReadonlyMap<string, number>
  readonly allNames: ReadonlyMap<string, number>
  readonly occurrences: Occurrences
}

/** A described assemblage, and its diversity at the coverage at which habitats are compared. */
export interface DescribedAssemblage {
  readonly result: AssemblageResult
  readonly sample: AbundanceCounts
  readonly atCommonCoverage: DiversityEstimates['atCommonCoverage']
}

/** Diversity of one assemblage. Bands, curves and ranks of sites are left out to keep results.json small. */
export function describeAssemblage(
  assemblage: Assemblage,
  commonCoverage: number | undefined,
  analysis: Analysis,
  runner: Runner
): DescribedAssemblage {
  const {of, id, label, style, part, scope, occurrences} = assemblage
  const {confidence} = analysis
  const sample = frequencyCounts([...assemblage.species.values()])
  const everything = frequencyCounts([...assemblage.allNames.values()])
  const whole = of !== 'site'
  const stream = (what: string) => `${what}/${scope.id}/${of}/${id}`
  const estimates = whole
    ? diversityEstimates(sample, {stream: stream('diversity'), commonCoverage}, analysis, runner)
    : plainEstimates(sample, commonCoverage, analysis)
  const net = [...part.units.values()].reduce((sum, unit) => sum + unit.net, 0)
  const say = (what: string) => `${what}, ${scope.label}, ${label}`
  const species = (what: string, value: number) => counted(say(what), value, words.species)
  const richness = (what: string, quantity: Quantity) =>
    measured(say(what), 'estimate', quantity, words.species)
  const index = (what: string, quantity: Quantity) => measured(say(what), 'diversity', quantity)
  const incidence = incidenceResult(
    occurrences,
    say,
    stream('incidence'),
    analysis,
    whole ? runner : undefined
  )
  const ofChao1 = richness('Lower bound of the number of species (Chao1)', chao1(sample, confidence))
  const ofAce = richness('Number of species (ACE)', ace(sample, 10, confidence))
  const result: AssemblageResult = {
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
    coverage: measured(say('Sample coverage'), 'coverage', estimates.coverage),
    chao1: ofChao1,
    ace: ofAce,
    hill: hillResult(sample, estimates.asymptotic, say),
    shannon: index('Shannon entropy, natural logarithm', shannon(sample)),
    giniSimpson: index('Gini-Simpson index', giniSimpson(sample)),
    pielou: index('Pielou evenness J', pielou(sample)),
    bergerParker: index('Berger-Parker dominance', bergerParker(sample)),
    allNames: {
      species: species('Species with every name counted', everything.species),
      chao1: richness(
        'Lower bound of the number of species with every name counted (Chao1)',
        chao1(everything, confidence)
      )
    },
    incidence,
    estimators: whole
      ? estimatorResults({
          chao1: ofChao1,
          ace: ofAce,
          doubletons: sample.doubletons,
          incidence,
          duplicates: occurrences.unitsBySpecies.filter((units) => units === 2).length
        })
      : [],
    profile: whole
      ? diversityProfile(sample, estimates.asymptotic)
      : {orders: [], observed: [], asymptotic: []},
    curves: pointCurves(estimates.curves, sample.size),
    coverageCurves: coverageCurves(estimates.curves, sample.size),
    ranks: whole ? ranksOf(assemblage.species, sample.size) : []
  }
  return {result, sample, atCommonCoverage: estimates.atCommonCoverage}
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
