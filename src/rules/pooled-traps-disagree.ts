import type {CatchRecord, Exposure} from '../model/study.ts'
import {failedExposure} from './failed-exposure.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

export const pooledTrapsDisagree = {
  code: 'pooled-traps-disagree',
  severity: 'caution',
  summary: 'a pooled catch is said to come from another number of traps than visits.csv has',
  why: 'The effort of a pooled catch is that of the visits of its site and round; if traps are missing among them, its rates are too high, and if there are too many, too low.',
  remedy: 'correct `pooled_traps`, or the visits of that site and round',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'visits.csv':
          'trap_id,opened,collected,round\nW1-1,2026-05-04,2026-05-18,R1\nW1-2,2026-05-04,2026-05-18,R1\nM1-1,2026-05-04,2026-05-18,R1\nM1-2,2026-05-04,2026-05-18,R1\n',
        'catch.csv':
          'site_id,round,pooled_traps,taxon,count\nW1,R1,2,Carabus problematicus,3\nM1,R1,5,Abax parallelepipedus,3\nM1,R1,5,Carabus problematicus,1\n'
      },
      findings: ['catch.csv:3:7: 5 traps are said to be pooled at site M1 in round R1; its visits are 2']
    }
  ],
  *check({settings}, index) {
    const told = new Set<string>()
    for (const {record, exposures} of index.matching.pooled) {
      const {pooledTraps, siteId, round, row} = record
      if (pooledTraps === undefined || index.isAside('catch', row) || agrees(record, exposures)) continue
      const key = `${siteId}\u0000${round}\u0000${pooledTraps}`
      if (told.has(key)) continue
      told.add(key)
      yield {
        place: index.place('catch', row, 'pooled_traps'),
        message: `${numberOf(pooledTraps, 'trap')} ${pooledTraps === 1 ? 'is' : 'are'} said to be pooled at site ${siteId} in round ${round}; its visits are ${exposures.length}`
      }
    }

    /** Traps that failed may have been tipped in with the others, or not. */
    function agrees({pooledTraps = 0}: CatchRecord, exposures: readonly Exposure[]): boolean {
      const usable = exposures.filter((exposure) => !failedExposure(exposure, settings)).length
      return pooledTraps >= usable && pooledTraps <= exposures.length
    }
  }
} as const satisfies Rule
