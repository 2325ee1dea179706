import type {Measure, Quantity} from '../model/quantity.ts'
import type {IncidenceResult} from '../model/results.ts'
import {chao2} from '../statistics/chao2.ts'
import {incidenceCounts} from '../statistics/frequency-counts.ts'
import {ice} from '../statistics/ice.ts'
import {jackknife1} from '../statistics/jackknife-1.ts'
import {jackknife2} from '../statistics/jackknife-2.ts'
import type {Analysis} from './analysis.ts'
import {counted, measured, words} from './counted.ts'
import {coverageCurves, sizeCurves} from './curves.ts'
import {diversityEstimates, plainEstimates} from './diversity-estimates.ts'
import {hillResult} from './hill.ts'
import type {Occurrences} from './occasions.ts'
import type {Runner} from './replicates.ts'

/** What a sampling unit of incidence is, in words. */
export const occasionWords = {'site-round': 'a site in a round', 'trap-round': 'a trap in a round'} as const

/** Diversity from occurrences in sampling units. Without a runner there is no bootstrap. */
export function incidenceResult(
  {units, unitsBySpecies, presence}: Occurrences,
  say: (what: string) => string,
  stream: string,
  analysis: Analysis,
  runner: Runner | undefined
): IncidenceResult {
  const {confidence} = analysis
  const unit = analysis.unit === 'trap' ? 'trap-round' : 'site-round'
  const sample = incidenceCounts(unitsBySpecies, units)
  const estimates =
    runner === undefined
      ? plainEstimates(sample, undefined, analysis)
      : diversityEstimates(sample, {stream, commonCoverage: undefined}, analysis, runner)
  const species = (what: string, value: number) => counted(say(what), value, words.species)
  const richness = (what: string, quantity: Quantity): Measure =>
    measured(say(what), 'estimate', quantity, words.species)
  return {
    unit,
    units: counted(say(`Sampling units with effort (${occasionWords[unit]})`), sample.size, words.units),
    incidences: counted(say('Occurrences of species in sampling units'), sample.records, words.occurrences),
    species: species('Species found in sampling units', sample.species),
    uniques: species('Species found in exactly one sampling unit (uniques)', sample.singletons),
    duplicates: species('Species found in exactly two sampling units (duplicates)', sample.doubletons),
    coverage: measured(say('Sample coverage of occurrences'), 'coverage', estimates.coverage),
    chao2: richness('Lower bound of the number of species (Chao2)', chao2(sample, confidence)),
    ice: richness('Number of species (ICE)', ice(presence, 10, confidence)),
    jackknife1: richness('Number of species (jackknife 1)', jackknife1(sample, confidence)),
    jackknife2: richness('Number of species (jackknife 2)', jackknife2(sample, confidence)),
    hill: hillResult(sample, estimates.asymptotic, (what) => say(`${what}, from occurrences`)),
    curves: sizeCurves(estimates.curves, sample.size),
    coverageCurves: coverageCurves(estimates.curves, sample.size)
  }
}
