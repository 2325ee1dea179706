import {dayOf, isoDay} from '../model/day.ts'
import type {Exposure} from '../model/study.ts'
import type {Rule} from './rule.ts'
import {reference} from './study-index.ts'

export const visitOutsideSeason = {
  code: 'visit-outside-season',
  severity: 'error',
  summary: 'a visit lies outside the season that study.yaml states',
  why: 'One of the two is wrong; a visit in the wrong year or month would change effort and season.',
  remedy: 'correct the date, or widen `season` in study.yaml',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'visits.csv': 'trap_id,opened,collected,sample\nW1-1,2026-05-04,2027-05-18,sorted\n'},
      findings: ['visits.csv:2:17: collected on 2027-05-18, after the season ends (2026-06-30)']
    }
  ],
  *check({exposures, settings}, index) {
    const start = dayOfText(settings.season?.start)
    const end = dayOfText(settings.season?.end)
    const byFault = new Map<string, {column: string; rows: Exposure[]}>()
    for (const exposure of exposures) {
      const first = exposure.opened ?? exposure.collected
      const early = start !== undefined && first.day < start
      const late = end !== undefined && exposure.collected.day > end
      if (!early && !late) continue
      const column = early ? (exposure.opened ? 'opened' : 'collected') : 'collected'
      const fault = early
        ? `${column} on ${isoDay(first.day)}, before the season starts (${settings.season?.start})`
        : `collected on ${isoDay(exposure.collected.day)}, after the season ends (${settings.season?.end})`
      const alike = byFault.get(fault)
      if (alike) alike.rows.push(exposure)
      else byFault.set(fault, {column, rows: [exposure]})
    }
    // Once for each day: a season that is wrong in study.yaml makes every visit wrong.
    for (const [fault, {column, rows}] of byFault) {
      yield {
        place: index.place('visits', rows[0]!.row, column),
        message: rows.length === 1 ? fault : `${rows.length} visits ${fault}`,
        setsAside: rows.map((exposure) => reference('visits', exposure))
      }
    }
  }
} as const satisfies Rule

function dayOfText(text: string | undefined): number | undefined {
  if (text === undefined) return undefined
  const [year = 0, month = 0, dayOfMonth = 0] = text.split('-').map(Number)
  return dayOf(year, month, dayOfMonth)
}
