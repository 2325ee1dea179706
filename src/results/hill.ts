import type {AssemblageResult} from '../model/results.ts'
import type {FrequencyCounts} from '../statistics/frequency-counts.ts'
import type {AsymptoticDiversity} from '../statistics/hill-asymptotic.ts'
import {hillObserved} from '../statistics/hill-observed.ts'
import {measured, words} from './counted.ts'

const names = ['Species richness', 'Diversity of common species', 'Diversity of dominant species'] as const

/** Hill numbers of orders 0, 1 and 2, as observed and as estimated for the whole assemblage. */
export function hillResult(
  sample: FrequencyCounts,
  {q0, q1, q2}: AsymptoticDiversity,
  say: (what: string) => string
): AssemblageResult['hill'] {
  const pair = (order: 0 | 1 | 2, asymptotic: AsymptoticDiversity['q0']) => ({
    observed: measured(
      say(`${names[order]} as observed (q = ${order})`),
      'diversity',
      hillObserved(sample, order),
      words.effective
    ),
    asymptotic: measured(
      say(`${names[order]}, asymptotic estimate (q = ${order})`),
      'diversity',
      asymptotic,
      words.effective
    )
  })
  return {q0: pair(0, q0), q1: pair(1, q1), q2: pair(2, q2)}
}
