import type {Measure} from '../../src/model/quantity.ts'
import type {AssemblageResult, CurveResult} from '../../src/model/results.ts'
import {blankAssemblage, blankScope} from '../results/blank-results.ts'
import type {HabitatPlan} from './fixture.ts'

/** Curves, profile, ordination and season of an invented scope, smooth and plausible; nothing is computed from counts. */
const ratio = (value: number): Measure => ({label: 'ratio', kind: 'ratio', value})
const count = (value: number): Measure => ({label: 'count', kind: 'count', value})
const rate = (value: number): Measure => ({label: 'rate', kind: 'rate', value})
const diversity = (value: number, spread?: number): Measure => ({
  label: 'diversity',
  kind: 'diversity',
  value,
  ...(spread !== undefined && {
    interval: {low: value - spread, high: value + spread, confidence: 0.95, method: 'assemblage bootstrap'}
  })
})

/** Effective species of an order when the curve has levelled off. */
export function levelOf(order: 0 | 1 | 2, species: number): number {
  return order === 0 ? species * 1.35 : order === 1 ? species * 0.5 : species * 0.3
}

/** A rising curve over the places given, with a band that widens. */
function risingCurve(
  order: 0 | 1 | 2,
  species: number,
  at: readonly number[],
  within: number,
  progress: (place: number) => number
): CurveResult {
  const level = levelOf(order, species)
  const values = at.map((place) => 1 + (level - 1) * progress(place))
  const half = values.map((value, index) => value * (index < within ? 0.08 : 0.2))
  return {
    order,
    at: [...at],
    values,
    low: values.map((value, index) => value - half[index]!),
    high: values.map((value, index) => value + half[index]!),
    within
  }
}

export function describedAssemblage(
  plan: HabitatPlan
): Pick<AssemblageResult, 'ace' | 'incidence' | 'estimators' | 'profile' | 'coverageCurves'> {
  const species = plan.counts.length
  if (species === 0) return blankAssemblage
  const coverages = Array.from({length: 40}, (_, index) => 0.2 + (index * 0.79) / 39)
  const units = plan.siteRates.length * 5
  const unitSizes = Array.from({length: units * 2}, (_, index) => index + 1)
  const orders = Array.from({length: 31}, (_, index) => index / 10)
  const profileAt = (order: number) => 1 + (species - 1) * Math.exp(-0.9 * order)
  return {
    ...blankAssemblage,
    coverageCurves: ([0, 1, 2] as const).map((order) =>
      risingCurve(order, species, coverages, 34, (place) => place ** (order === 0 ? 12 : 4))
    ),
    incidence: {
      ...blankAssemblage.incidence,
      units: count(units),
      species: count(species),
      curves: ([0, 1, 2] as const).map((order) =>
        risingCurve(order, species, unitSizes, units, (place) => place / (place + units / 2))
      )
    },
    profile: {
      orders,
      observed: orders.map(profileAt),
      asymptotic:
        species < 5
          ? []
          : ([0, 1, 2] as const).map((order) => {
              const value = profileAt(order) * 1.15
              return {order, value, low: value * 0.85, high: value * (order === 0 ? 2.4 : 1.2)}
            })
    }
  }
}

/** Where the sites of a habitat stand in the ordination: around a place of its own. */
function scoresOf(plan: HabitatPlan, style: number) {
  return plan.siteRates.map((_, index) => ({
    id: `${plan.id}-${index + 1}`,
    label: `${plan.label} ${index + 1}`,
    habitat: plan.id,
    style,
    at: [
      Math.cos(style * 2.4) * 0.4 + Math.sin(index * 5 + style) * 0.07,
      Math.sin(style * 2.4) * 0.3 + Math.cos(index * 7 + style) * 0.07
    ]
  }))
}

export function describedScope(
  plans: readonly HabitatPlan[],
  rounds: readonly (readonly [opened: string, collected: string])[]
): typeof blankScope {
  const compared = plans.map((plan, style) => ({plan, style})).filter(({plan}) => plan.counts.length > 2)
  const scores = plans.flatMap(scoresOf)
  const round = (index: number, value: number) => ({
    round: `${index + 1}`,
    opened: rounds[index]![0],
    collected: rounds[index]![1],
    individuals: count(Math.round(value * 2)),
    rate: rate(value)
  })
  return {
    ...blankScope,
    equalCoverage: {
      coverage: {label: 'coverage', kind: 'coverage', value: 0.91},
      habitats: compared.map(({plan, style}) => ({
        id: plan.id,
        label: plan.label,
        style,
        size: count(100),
        beyond: false,
        q0: diversity(plan.counts.length * 0.9, 2),
        q1: diversity(plan.counts.length * 0.45, 1),
        q2: diversity(plan.counts.length * 0.27, 0.5)
      })),
      leftOut: [],
      sites: []
    },
    composition: {
      ...blankScope.composition,
      principalCoordinates: {
        shares: [0.412, 0.187].map((value) => ({label: 'share', kind: 'share', value})),
        imaginary: {label: 'share', kind: 'share', value: 0.06},
        scores
      },
      nonMetricScaling: {
        stress: ratio(0.08),
        starts: count(20),
        startsAtBest: count(14),
        scores: scores.map(({at, ...score}) => ({...score, at: at.map((value) => value * 2)}))
      }
    },
    season: plans.every(({counts}) => counts.length === 0)
      ? []
      : ['Pterostichus melanarius', 'Nebria brevicollis', 'Carabidae sp. 6'].map((taxon, index) => ({
          taxon,
          individuals: count(200 - 60 * index),
          rounds: count(3),
          first: round(index, 2.5),
          last: round(4, 1.2),
          highest: round(index + 1, 11.4),
          rates: rounds.map((_, place) =>
            place === 3 && index === 2 ? null : place === index + 1 ? 11.4 : place < index ? 0 : 2.5
          )
        }))
  }
}
