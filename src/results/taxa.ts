import type {Measure} from '../model/quantity.ts'
import type {TaxonResult} from '../model/results.ts'
import type {Taxon} from '../model/study.ts'
import {activityDensity} from './activity-density.ts'
import type {Analysis} from './analysis.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, share, words} from './counted.ts'
import {groupBy} from './group-by.ts'
import type {Parts} from './parts.ts'
import {isWithheldFromPlaces, type RecordedName} from './recorded-names.ts'
import {addToUnit, type UnitCatches} from './sampling-units.ts'
import type {CatchInUse} from './season-records.ts'
import type {RoundInUse} from './season-rounds.ts'
import type {SiteInUse} from './study-area.ts'

/** Every recorded name in systematic order, with where, when and how many. */
export function taxonResults(analysis: Analysis, parts: Parts): TaxonResult[] {
  const byName = groupBy(analysis.summed, ({name}) => name)
  const inRates = analysis.summed.reduce((sum, each) => sum + (each.inRates ? each.count : 0), 0)
  const details = detailsByName(analysis)
  return analysis.names.names.map((name) => {
    return taxonResult(name, byName.get(name) ?? [], details[name.index]!, inRates, analysis, parts)
  })
}

function taxonResult(
  recorded: RecordedName,
  catches: readonly CatchInUse[],
  {females, males, sexed, firstRound, lastRound}: Details,
  allInRates: number,
  {area, unit, confidence}: Analysis,
  parts: Parts
): TaxonResult {
  const {name} = recorded
  const caught: UnitCatches = new Map()
  const whole = tallyOf(catches)
  for (const each of catches) if (each.inRates) addToUnit(caught, each, unit)
  const individuals = (what: string, value: number) => counted(`${what}, ${name}`, value, words.individuals)
  const sites = (value: number, where: string) =>
    counted(`Sites where ${name} was caught, ${where}`, value, words.sites)
  const byHabitat = groupBy(catches, ({site}) => site.habitat)
  const withheld = isWithheldFromPlaces(recorded)
  return {
    taxon: name,
    ...describedBy(recorded.taxon),
    ...(recorded.sensitive !== undefined && {sensitive: recorded.sensitive}),
    inTaxaTable: recorded.taxon !== undefined,
    individuals: individuals('Individuals in the rates', whole.individuals),
    outsideEffort: individuals('Individuals caught outside the effort', whole.outside),
    total: individuals('Individuals recorded', whole.individuals + whole.outside),
    share: share(
      `Share of all individuals in the rates, ${name}`,
      whole.individuals,
      allInRates,
      'nothing is in the rates'
    ),
    sites: sites(whole.sites.size, 'whole study'),
    rate: activityDensity(`Activity-density, ${name}, whole study`, caught, parts.study.units, confidence),
    females: sexed ? individuals('Females recorded', females) : unsexed('Females recorded', name),
    males: sexed ? individuals('Males recorded', males) : unsexed('Males recorded', name),
    immatures: individuals('Larvae and other immature animals recorded', whole.immatures),
    habitats: area.habitats.map((habitat) => {
      const here = tallyOf(byHabitat.get(habitat) ?? [])
      const where = `${name}, ${habitat.label}`
      return {
        id: habitat.id,
        individuals: counted(`Individuals in the rates, ${where}`, here.individuals, words.individuals),
        outsideEffort: counted(
          `Individuals caught outside the effort, ${where}`,
          here.outside,
          words.individuals
        ),
        sites: sites(here.sites.size, habitat.label),
        rate: activityDensity(
          `Activity-density, ${where}`,
          caught,
          parts.ofHabitat(habitat).units,
          confidence
        )
      }
    }),
    bySite: withheld
      ? []
      : [...whole.sites]
          .sort(([a], [b]) => codeUnitOrder(a.id, b.id))
          .map(([site, total]) => ({
            id: site.id,
            total: individuals(`Individuals recorded, ${site.name}`, total)
          })),
    ...(firstRound !== undefined && {firstRound: firstRound.id}),
    ...(lastRound !== undefined && {lastRound: lastRound.id})
  }
}

/** No sex on record means that nobody looked, and not that there were none. */
function unsexed(what: string, name: string): Measure {
  return {
    label: `${what}, ${name}`,
    kind: 'count',
    unit: words.individuals,
    notDefined: 'no sex is on record'
  }
}

interface Details {
  females: number
  males: number
  /** Whether any record says a sex, be it that it could not be told. */
  sexed: boolean
  firstRound: RoundInUse | undefined
  lastRound: RoundInUse | undefined
}

/** What the summed catches no longer tell: sexes and rounds, by index of the name. */
function detailsByName({names, catches}: Analysis): readonly Details[] {
  const details = names.names.map((): Details => {
    return {females: 0, males: 0, sexed: false, firstRound: undefined, lastRound: undefined}
  })
  for (const {name, sex, count, round} of catches) {
    const of = details[name.index]!
    if (sex !== undefined) of.sexed = true
    if (sex === 'female') of.females += count
    if (sex === 'male') of.males += count
    if (round === undefined) continue
    if (of.firstRound === undefined || round.index < of.firstRound.index) of.firstRound = round
    if (of.lastRound === undefined || round.index > of.lastRound.index) of.lastRound = round
  }
  return details
}

function tallyOf(catches: readonly CatchInUse[]) {
  const sites = new Map<SiteInUse, number>()
  let [individuals, outside, immatures] = [0, 0, 0]
  for (const {count, lifeStage, site, inRates} of catches) {
    if (inRates) individuals += count
    else outside += count
    if (lifeStage !== 'adult') immatures += count
    sites.set(site, (sites.get(site) ?? 0) + count)
  }
  return {individuals, outside, immatures, sites}
}

const described = [
  'rank',
  'class',
  'order',
  'family',
  'authority',
  'englishName',
  'guild',
  'bodyLengthMm',
  'redList',
  'legalStatus',
  'note'
] as const satisfies readonly (keyof Taxon)[]

function describedBy(taxon: Taxon | undefined): Partial<Pick<Taxon, (typeof described)[number]>> {
  const entries = described.map((key) => [key, taxon?.[key]]).filter(([, value]) => value !== undefined)
  return Object.fromEntries(entries)
}
