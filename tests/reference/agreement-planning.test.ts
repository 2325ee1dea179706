import {expect, test} from 'vitest'
import {effortForPrecision} from '../../src/statistics/effort-for-precision.ts'
import {randomStream} from '../../src/statistics/random-stream.ts'
import {smallestDetectableRatio} from '../../src/statistics/smallest-detectable-ratio.ts'
import {disagreement, solvedSize} from './disagreement.ts'
import {cases, paired, reference} from './reference-file.ts'

test('effort for a narrower interval is that of the second implementation', () => {
  const found = paired(cases.precision, reference.precision).flatMap(({id, input, figures}) => {
    const {theta, halfWidth, ...layout} = input
    const {present, totalEffort, units} = effortForPrecision({
      ...layout,
      theta: theta ?? Number.POSITIVE_INFINITY,
      relativeHalfWidth: halfWidth
    })
    return [
      ...disagreement(`${id} present`, present, figures.present),
      // What is left of the target after clumping is a small difference: the effort magnifies its rounding.
      ...disagreement(`${id} effort`, totalEffort, figures.totalEffort, solvedSize),
      ...disagreement(`${id} units`, units, figures.units)
    ]
  })
  expect(found).toEqual([])
})

/**
 * With 1000 seasons the share found has a standard error of 1.3 %, which makes one or two per cent of the ratio; two
 * programs, each within 2 % of its own, may differ by some more.
 */
const monteCarlo = {relative: 0.08, absolute: 0}

test.each(paired(cases.detection, reference.detection))(
  'the smallest ratio that $id would show is that of the second implementation',
  ({id, input, figures}) => {
    const {expected, habitat: groups, block, theta, raised} = input
    const ours = smallestDetectableRatio(
      {expected, groups, raised, theta: theta ?? Number.POSITIVE_INFINITY, ...(block && {blocks: block})},
      {random: randomStream(1, `agreement/${id}`), simulations: 1000}
    )
    expect(disagreement(id, ours, figures.ratio, monteCarlo)).toEqual([])
  }
)
