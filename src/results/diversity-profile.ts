import {isDefined} from '../model/quantity.ts'
import type {AssemblageResult} from '../model/results.ts'
import type {FrequencyCounts} from '../statistics/frequency-counts.ts'
import type {AsymptoticDiversity} from '../statistics/hill-asymptotic.ts'
import {hillProfile} from '../statistics/hill-profile.ts'
import {short} from './curves.ts'
import {orders} from './diversity-estimates.ts'

/** Observed diversity at orders 0 to 3, and the asymptotic estimates of orders 0, 1 and 2 with their intervals. */
export function diversityProfile(
  sample: FrequencyCounts,
  asymptotic: AsymptoticDiversity
): AssemblageResult['profile'] {
  const points = hillProfile(sample).flatMap(({order, diversity}) => {
    return isDefined(diversity) ? [{order, value: diversity.value}] : []
  })
  return {
    orders: points.map(({order}) => short(order)),
    observed: points.map(({value}) => short(value)),
    asymptotic: orders.flatMap((order) => {
      const estimate = [asymptotic.q0, asymptotic.q1, asymptotic.q2][order]!
      if (!isDefined(estimate)) return []
      const {value, interval} = estimate
      return [
        {order, value: short(value), ...(interval && {low: short(interval.low), high: short(interval.high)})}
      ]
    })
  }
}
