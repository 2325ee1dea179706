import type {CountModel} from './count-model.ts'
import {designMatrix} from './design-matrix.ts'
import {type GroupedCounts, logEfforts} from './likelihood-ratio-permutation.ts'
import {negativeBinomialGlm} from './negative-binomial-glm.ts'

export interface RateModel {
  readonly model: CountModel
  /** What a group's log rate is made of: 1 in the column of its coefficient, if it has one. */
  readonly contrastOf: (group: string | number) => readonly number[]
}

/**
 * The model of activity-density of groups: negative binomial counts, log link, offset ln effort, groups and
 * blocks as factors. Its Pearson residuals, in the order of the units, show which group or unit it fits
 * badly.
 *
 * Formula: ln mu = ln effort + group + block (negativeBinomialGlm).
 *
 * Source: Lawless 1987, Can. J. Stat. 15:209-225.
 *
 * Edge cases: those of negativeBinomialGlm.
 *
 * @throws RangeError where an effort is not above 0.
 *
 * @example rateModel({counts: [1, 2, 6, 9], efforts: [1, 1, 1, 1], groups: ['a', 'a', 'b', 'b']}).contrastOf('b') // => [0, 1]
 * @example rateModel({counts: [0, 0, 6, 9], efforts: [1, 1, 1, 1], groups: ['a', 'a', 'b', 'b']}).model.failed // => 'separation'
 */
export function rateModel(data: GroupedCounts): RateModel {
  const {counts, groups, blocks} = data
  const {rows, columnOf} = designMatrix(counts.length, blocks ? [groups, blocks] : [groups])
  return {
    model: negativeBinomialGlm({counts, design: rows, offset: logEfforts(data)}),
    contrastOf: (group) => {
      const own = columnOf[0]!.get(group)
      return (rows[0] ?? []).map((_, column) => (column === own ? 1 : 0))
    }
  }
}
