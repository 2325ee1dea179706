import {expect, test} from 'vitest'
import {isDefined} from '../../src/model/quantity.ts'
import {commonCoverage} from '../../src/statistics/common-coverage.ts'
import {coverage} from '../../src/statistics/coverage.ts'
import {diversityAtCoverage} from '../../src/statistics/diversity-at-coverage.ts'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {disagreement, solvedSize} from './disagreement.ts'
import {cases, paired, reference} from './reference-file.ts'

const samples = new Map(cases.abundance.map(({id, counts}) => [id, frequencyCounts(counts)]))

const comparisons = paired(cases.equalCoverage, reference.equalCoverage).map(({id, input, figures}) => ({
  id,
  figures,
  common: commonCoverage(input.members.map((name) => ({name, sample: samples.get(name)!})))
}))

test('both implementations compare at the same coverage and leave out the same samples', () => {
  const found = comparisons.flatMap(({id, common, figures}) => {
    const left = figures.members.filter(({leftOut}) => leftOut !== undefined).map((member) => member.id)
    expect(common.leftOut.map(({name}) => name)).toEqual(left)
    return disagreement(id, common.coverage, figures.coverage)
  })
  expect(found).toEqual([])
})

test('both implementations find the same sizes and diversities at the common coverage', () => {
  const found = comparisons.flatMap(({id, common, figures}) => {
    if (!isDefined(common.coverage)) return []
    const target = common.coverage.value
    return figures.members
      .filter(({leftOut}) => leftOut === undefined)
      .flatMap((member) => {
        const sample = samples.get(member.id)!
        const {size, q0, q1, q2} = diversityAtCoverage(sample, target)
        const what = `${id} ${member.id}`
        return [
          ...disagreement(`${what} coverage`, coverage(sample), member.coverageAtN),
          // A size in the narrow jump of coverage at n is as uncertain as the jump is narrow.
          ...disagreement(`${what} size`, size, member.size, solvedSize),
          ...disagreement(`${what} q 0`, q0, member.q0, solvedSize),
          ...disagreement(`${what} q 1`, q1, member.q1, solvedSize),
          ...disagreement(`${what} q 2`, q2, member.q2, solvedSize)
        ]
      })
  })
  expect(found).toEqual([])
})
