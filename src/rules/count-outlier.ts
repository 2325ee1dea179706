import {median} from '../statistics/median.ts'
import type {Rule} from './rule.ts'

/** Fewer rows say nothing of what is usual. */
const fewestRows = 10
/** Robust standard deviations above the median, on logarithms. */
const deviations = 3
/** Median absolute deviation to standard deviation, for a normal distribution. */
const scale = 1.4826
/** Half of the rows of most kinds hold one animal, so that their deviation is 0: a limit below tenfold means nothing. */
const leastFactor = 10
/** Catches are clumped; a slip stands alone above the largest true count. */
const aboveNext = 3

export const countOutlier = {
  code: 'count-outlier',
  severity: 'note',
  summary: 'one count of a kind stands far above all its others',
  why: 'A key struck twice, 33 for 3, changes the totals of a site, its rate and its evenness, and no test notices.',
  remedy: 'look at the vial or the bench sheet; if the count is right, there is nothing to do',
  source:
    'median absolute deviation as a guard against outliers: Iglewicz & Hoaglin 1993 (from memory); the limits are proposals of ours: at least 10 rows, above 3 robust standard deviations on logarithms and 10 times the median, and 3 times the next largest',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv': `trap_id,collected,taxon,count,vial\n${[3, 2, 4, 3, 5, 1, 2, 6, 3, 44]
          .map((count, at) => `W1-1,2026-05-18,Carabus problematicus,${count},${at + 1}\n`)
          .join('')}`
      },
      findings: [
        'catch.csv:11:39: 44 Carabus problematicus in one row: the median of its 10 rows is 3, the next largest count 6, the limit for its kind 30'
      ]
    }
  ],
  *check(_study, index) {
    for (const [taxon, counts] of adultCounts(index.fieldwork.catch)) {
      const largest = counts.largest
      if (counts.rows < fewestRows || counts.largest < aboveNext * counts.next) continue
      // Few kinds come so far, so that only theirs are written out one by one.
      const logarithms = [...counts.rowsOfCount].flatMap(([count, rows]) =>
        Array<number>(rows).fill(Math.log(count))
      )
      const middle = numberIn(median(logarithms))
      const deviation = scale * numberIn(median(logarithms.map((value) => Math.abs(value - middle))))
      const limit = Math.exp(middle + Math.max(deviations * deviation, Math.log(leastFactor)))
      if (largest <= limit) continue
      yield {
        place: index.place('catch', counts.largestRow, 'count'),
        message: `${largest} ${taxon} in one row: the median of its ${counts.rows} rows is ${Number(Math.exp(middle).toFixed(1))}, the next largest count ${counts.next}, the limit for its kind ${Math.round(limit)}`,
        cell: `${largest}`
      }
    }
  }
} as const satisfies Rule

interface Counts {
  rows: number
  largest: number
  largestRow: number
  next: number
  readonly rowsOfCount: Map<number, number>
}

/** Counts above 0 of each name; young animals come in broods and are no measure of a slip. */
function adultCounts(
  records: readonly {
    readonly row: number
    readonly taxon: string
    readonly count: number
    readonly lifeStage: string
  }[]
): ReadonlyMap<string, Counts> {
  const byTaxon = new Map<string, Counts>()
  for (const {row, taxon, count, lifeStage} of records) {
    if (count === 0 || lifeStage !== 'adult') continue
    let counts = byTaxon.get(taxon)
    if (counts === undefined) {
      counts = {rows: 0, largest: 0, largestRow: row, next: 0, rowsOfCount: new Map()}
      byTaxon.set(taxon, counts)
    }
    counts.rows += 1
    counts.rowsOfCount.set(count, (counts.rowsOfCount.get(count) ?? 0) + 1)
    if (count > counts.largest) {
      counts.next = counts.largest
      counts.largest = count
      counts.largestRow = row
    } else if (count > counts.next) {
      counts.next = count
    }
  }
  return byTaxon
}

function numberIn(quantity: ReturnType<typeof median>): number {
  return 'value' in quantity ? quantity.value : 0
}
