import {expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {ratioShare, shareBetweenUnitsMethod} from '../../src/statistics/ratio-share.ts'
import {disagreements} from './disagreement.ts'
import {cases, paired, reference} from './reference-file.ts'

test('shares and their intervals, between units and exact, are those of the second implementation', () => {
  const found = paired(cases.shares, reference.shares).flatMap(({id, input, figures}) => {
    const ours = ratioShare(input.part.map((part, unit) => ({part, whole: input.whole[unit]!})))
    const {value, standardError, interval} = isDefined(ours) ? ours : {}
    const kind = interval && (interval.method === shareBetweenUnitsMethod ? 'ratio' : 'exact')
    return [
      ...(kind === (figures.interval ?? undefined) ? [] : [`${id}: ${kind} here, ${figures.interval} there`]),
      ...disagreements(
        id,
        [value, standardError, interval?.low, interval?.high],
        [figures.share, figures.se, figures.lower, figures.upper]
      )
    ]
  })
  expect(found).toEqual([])
})
