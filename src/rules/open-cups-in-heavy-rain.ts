import {isoDay} from '../model/day.ts'
import {grouped} from './fieldwork.ts'
import {nightsOpen} from './nights-open.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

/** A day of very heavy rain by the index R20mm of climate science. */
const heavyRainMm = 20

export const openCupsInHeavyRain = {
  code: 'open-cups-in-heavy-rain',
  severity: 'note',
  summary: 'traps without cover or drainage stood open in heavy rain',
  why: 'Uncovered traps are diluted and overflow, and what floats out is gone from the catch without a trace.',
  remedy:
    'look whether `diluted` and `overflowed` were written down after those days; next time cover the traps or drill holes below the rim',
  source:
    'Skvarla et al. 2014; heavy rain as 20 mm in a day: climate index R20mm of the ETCCDI (from memory)',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'study.yaml': 'title: T\ntrap_types: {cup: {cover: false}}\n',
        'weather.csv': 'date,rain_mm\n2026-05-10,34\n2026-05-11,2\n'
      },
      findings: [
        'study.yaml:2:27: `cup` has no cover, and 34 mm of rain fell on 2026-05-10 (1 day of 20 mm or more while traps were open)'
      ]
    }
  ],
  *check({weather, settingPlace}, index) {
    const wet = weather.filter(({rainMm = 0}) => rainMm >= heavyRainMm)
    if (wet.length === 0) return
    const {visits, trapTypes} = index.fieldwork
    for (const [id, ofType] of grouped(visits, ({at}) => at.trapType)) {
      const {cover, drainage} = trapTypes.get(id ?? '') ?? {}
      // Only what is said counts: a type of which nothing is said is the reporting checklist's business.
      if (id === undefined || (cover !== false && drainage !== false) || cover || drainage) continue
      const open = nightsOpen(ofType, 1)
      const days = wet.filter(({day}) => open(day, day + 1) > 0)
      const [first, ...more] = days
      if (first === undefined) continue
      const worst = more.reduce((most, day) => ((day.rainMm ?? 0) > (most.rainMm ?? 0) ? day : most), first)
      yield {
        place: settingPlace(['trap_types', id, cover === false ? 'cover' : 'drainage']),
        message: `\`${id}\` has no ${cover === false ? 'cover' : 'drainage'}, and ${worst.rainMm} mm of rain fell on ${isoDay(worst.day)} (${numberOf(days.length, 'day')} of ${heavyRainMm} mm or more while traps were open)`
      }
    }
  }
} as const satisfies Rule
