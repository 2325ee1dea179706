import type {CatchRecord} from '../model/study.ts'
import {whence} from './duplicate-catch-row.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

export const sortedPartMissing = {
  code: 'sorted-part-missing',
  severity: 'caution',
  summary: 'some rows of a collection say which part of the sample was sorted, others do not',
  why: 'An empty cell means the whole sample. If those rows too are counts of a part, their kinds are several times too rare.',
  remedy:
    'fill `sample_fraction` in every row of such a collection; write 1 for kinds that were picked out of the whole sample',
  source:
    'subsampling must be reported: Biological Survey of Canada 1994; common practice, no source for the rule',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count,sample_fraction\nW1-1,2026-05-18,Carabus problematicus,3,0.25\nW1-1,2026-05-18,Abax parallelepipedus,2,\n'
      },
      findings: [
        'catch.csv:3:41: the sorted part is missing in 1 of 2 rows of trap W1-1 on 2026-05-18, and given in the others'
      ]
    },
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count,sample_fraction\nW1-1,2026-05-18,Carabus problematicus,3,0.25\nW1-1,2026-05-18,Abax parallelepipedus,2,1\n'
      },
      findings: []
    }
  ],
  *check({tables}, index) {
    if (!tables.catch?.columns.has('sample_fraction')) return
    const doubtful: {first: CatchRecord; missing: number; rows: number}[] = []
    for (const records of index.matching.ofExposure.values()) {
      let missing = 0
      let first: CatchRecord | undefined
      let isPart = false
      for (const record of records) {
        if (record.sampleFraction < 1) isPart = true
        if (record.sampleFractionStated || index.isAside('catch', record.row)) continue
        missing += 1
        first ??= record
      }
      if (first !== undefined && isPart) doubtful.push({first, missing, rows: records.length})
    }
    const [earliest] = doubtful
    if (earliest === undefined) return
    const {first, missing, rows} = earliest
    const further =
      doubtful.length === 1 ? '' : `; ${numberOf(doubtful.length - 1, 'collection')} more like that`
    yield {
      place: index.place('catch', first.row, 'sample_fraction'),
      message: `the sorted part is missing in ${missing} of ${numberOf(rows, 'row')} of ${whence(first)}, and given in the others${further}`
    }
  }
} as const satisfies Rule
