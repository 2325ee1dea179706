import {numberOf} from './number-of.ts'
import {placedSites} from './placed-sites.ts'
import type {Rule} from './rule.ts'

const metresPerDegree = 111_195

export const coarseCoordinates = {
  code: 'coarse-coordinates',
  severity: 'note',
  summary: 'positions have too few decimals for the traps that they stand for',
  why: 'Nobody finds the traps again by such a position, and sites or traps near each other seem to lie at one place.',
  remedy:
    'write four or five decimals, which is 11 or 1 metres; what others are shown is a matter of `coordinates_shown` alone',
  source:
    'coordinates and their uncertainty belong in a report: Biological Survey of Canada 1994; the limit is a proposal of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {'study.yaml': 'title: T\nlayout: {spacing_m: 10}\n'},
      findings: [
        'sites.csv:2:9: positions of sites have at most 2 decimals, a step of 1112 m, but the traps of a site stand within 40 m'
      ]
    }
  ],
  *check({settings}, index) {
    const spacing = settings.layout?.spacing_m
    if (spacing === undefined) return
    const {sites, traps, trapsOfSite} = index.fieldwork
    const placed = placedSites(sites)
    const placedTraps = traps.filter(({trap}) => trap.latitude !== undefined && trap.longitude !== undefined)
    const most = Math.max(2, ...[...trapsOfSite.values()].map((ofSite) => ofSite.length))
    for (const [table, positions, metres, what] of [
      ['sites', placed.map(({site}) => site), spacing * (most - 1), 'the traps of a site stand within'],
      ['traps', placedTraps.map(({trap}) => trap), spacing, 'traps stand apart by']
    ] as const) {
      const [first] = positions
      if (first === undefined) continue
      // Zeros at the end are lost in reading, so only the finest of all says how finely positions were written.
      const decimals = Math.max(
        ...positions.flatMap(({latitude = 0, longitude = 0}) => [decimalsOf(latitude), decimalsOf(longitude)])
      )
      const step = metresPerDegree / 10 ** decimals
      if (step <= metres) continue
      yield {
        place: index.place(table, first.row, 'latitude'),
        message: `positions of ${table} have at most ${numberOf(decimals, 'decimal')}, a step of ${Math.round(step)} m, but ${what} ${Math.round(metres)} m`
      }
    }
  }
} as const satisfies Rule

function decimalsOf(degrees: number): number {
  return `${degrees}`.split('.')[1]?.length ?? 0
}
