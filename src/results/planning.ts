import type {Quantity} from '../model/quantity.ts'
import type {ComparisonResult, PlanningResult} from '../model/results.ts'
import {isFitted} from '../statistics/count-model.ts'
import {designMatrix} from '../statistics/design-matrix.ts'
import {effortForPrecision} from '../statistics/effort-for-precision.ts'
import type {FrequencyCounts} from '../statistics/frequency-counts.ts'
import {negativeBinomialGlm} from '../statistics/negative-binomial-glm.ts'
import type {Analysis} from './analysis.ts'
import type {Comparable} from './comparable.ts'
import type {Compared} from './comparison-test.ts'
import {counted, measured, trapNights, words} from './counted.ts'
import type {Parts} from './parts.ts'
import {nightsForCoverage} from './planning-coverage.ts'
import {detectionResult} from './planning-detection.ts'
import {sortedCount, type UnitCatches, type UnitEffort} from './sampling-units.ts'
import type {HabitatInUse} from './study-area.ts'

/** Whose catch is planned for. */
export interface Planned extends Compared {
  /** Catch of each sampling unit in all rounds. */
  readonly caughtInAll: UnitCatches
  /** Species counts of a habitat; absent for all names together, which are no species. */
  readonly sampleOf?: (habitat: HabitatInUse) => FrequencyCounts
}

/** Sampling units of a habitat with what they caught, as the model of counts has it. */
interface HabitatUnits {
  readonly habitat: HabitatInUse
  readonly units: readonly {readonly count: number; readonly effort: UnitEffort}[]
}

/** What this season tells about the next: effort for completeness, for a narrower rate, and what could be shown. */
export function planningResult(
  planned: Planned,
  comparison: ComparisonResult,
  comparable: Comparable,
  analysis: Analysis,
  parts: Parts
): PlanningResult {
  const {label, caughtInAll, sampleOf} = planned
  const {coverage: coverageTarget = 0.99, half_width: halfWidth = 0.25} =
    analysis.study.settings.analysis?.planning ?? {}
  const all = analysis.area.habitats.map((habitat): HabitatUnits => {
    const units = [...parts.ofHabitat(habitat).units].map(([index, effort]) => {
      return {count: sortedCount(caughtInAll.get(index)), effort}
    })
    return {habitat, units}
  })
  const theta = clumping(all)
  return {
    of: label,
    coverageTarget: {label: 'Sample coverage planned for', kind: 'coverage', value: coverageTarget},
    halfWidthTarget: {
      label: 'Half-width planned for, of the activity-density',
      kind: 'share',
      value: halfWidth
    },
    theta: measured(
      `Aggregation parameter theta within habitats, ${label}`,
      'ratio',
      'value' in theta && !Number.isFinite(theta.value)
        ? {notDefined: 'the catches spread no more than Poisson counts would'}
        : theta
    ),
    habitats: all.map((own) => {
      const {id, label: name, style} = own.habitat
      const where = `${label}, ${name}`
      const net = own.units.reduce((sum, {effort}) => sum + effort.net, 0)
      return {
        id,
        label: name,
        style,
        net: trapNights(`Trap-nights that count, ${where}`, net),
        units: counted(`Sampling units, ${where}`, own.units.length, words.units),
        ...(sampleOf && nightsForCoverage(sampleOf(own.habitat), net, coverageTarget, where)),
        ...precisionOf(own, theta, halfWidth, analysis, where)
      }
    }),
    detection: detectionResult(planned, comparison, comparable, analysis)
  }
}

/** How unlike the units of one habitat are, blocks and all, from the habitats that have several of them. */
function clumping(habitats: readonly HabitatUnits[]): Quantity {
  const several = habitats.filter(({units}) => units.length > 1)
  if (several.length === 0) return {notDefined: 'no habitat has more than one sampling unit'}
  const caughtSome = several.filter(({units}) => units.some(({count}) => count > 0))
  if (caughtSome.length === 0) return {notDefined: 'nothing was caught'}
  const units = caughtSome.flatMap((each) => each.units)
  const groups = caughtSome.flatMap(({habitat, units: own}) => own.map(() => habitat.id))
  const model = negativeBinomialGlm({
    counts: units.map(({count}) => count),
    design: designMatrix(units.length, [groups]).rows,
    offset: units.map(({effort}) => Math.log(effort.sortedNet))
  })
  if (!isFitted(model)) return {notDefined: model.message}
  return {value: model.theta ?? Number.POSITIVE_INFINITY}
}

function precisionOf(
  {units}: HabitatUnits,
  theta: Quantity,
  relativeHalfWidth: number,
  {confidence}: Analysis,
  where: string
): Pick<PlanningResult['habitats'][number], 'halfWidth' | 'nightsForRate' | 'unitsForRate'> {
  const effort = units.reduce((sum, each) => sum + each.effort.net, 0)
  // Counting error is that of the animals sorted: as large a part of the samples is taken to be sorted again.
  const sorted = units.reduce((sum, each) => sum + each.count, 0)
  const {
    present,
    totalEffort,
    units: needed
  } = 'value' in theta
    ? effortForPrecision({
        rate: effort === 0 ? 0 : sorted / effort,
        theta: theta.value,
        units: units.length,
        effort,
        relativeHalfWidth,
        confidence
      })
    : {present: theta, totalEffort: theta, units: theta}
  // The caption of every table says that these are estimates; a note at each number would hide the other notes.
  const beyond = (quantity: Quantity, now: number): Quantity =>
    'value' in quantity ? {value: Math.max(0, Math.ceil(quantity.value - now - 1e-9))} : quantity
  const label = (what: string) => `${what}, ${where}`
  return {
    halfWidth: measured(
      label('Half-width over the activity-density'),
      'share',
      'value' in present ? {value: present.value} : present
    ),
    nightsForRate: measured(
      label('Further trap-nights at the same sampling units'),
      'nights',
      beyond(totalEffort, effort),
      words.trapNights
    ),
    unitsForRate: measured(
      label('Further sampling units'),
      'count',
      beyond(needed, units.length),
      words.units
    )
  }
}
