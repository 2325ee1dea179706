import type {Quantity} from '../model/quantity.ts'
import type {PlanningResult} from '../model/results.ts'
import {coverage} from '../statistics/coverage.ts'
import type {FrequencyCounts} from '../statistics/frequency-counts.ts'
import {sizeForCoverage} from '../statistics/size-for-coverage.ts'
import {measured, words} from './counted.ts'

/** Further trap-nights for a target coverage: individuals by extrapolation, at as many a night as in this season. */
export function nightsForCoverage(
  sample: FrequencyCounts,
  net: number,
  target: number,
  where: string
): Required<Pick<PlanningResult['habitats'][number], 'coverage' | 'nightsForCoverage'>> {
  const reached = coverage(sample)
  return {
    coverage: measured(`Sample coverage, ${where}`, 'coverage', reached),
    nightsForCoverage: measured(
      `Further trap-nights for the coverage planned for, ${where}`,
      'nights',
      'value' in reached && reached.value >= target ? {value: 0} : furtherNights(sample, net, target),
      words.trapNights
    )
  }
}

function furtherNights(sample: FrequencyCounts, net: number, target: number): Quantity {
  const size = sizeForCoverage(sample, target)
  if (!('value' in size)) return size
  const times = size.value / sample.size
  return {
    value: Math.ceil((times - 1) * net - 1e-9),
    ...(times > 2 && {caution: 'beyond twice the catch, where extrapolation is a guess'})
  }
}
