import {greatCircleDistance} from '../statistics/great-circle-distance.ts'
import {median} from '../statistics/median.ts'
import {middleOf, placedSites, swappedSites} from './placed-sites.ts'
import type {Rule} from './rule.ts'

/** Ours, no source: far is so many times the median distance from the middle, and at least so many metres. */
const farFactor = 10
const farMetres = 10_000
/** With fewer sites there is no telling which of them is the wrong one. */
const fewestSites = 4

export const siteFarFromTheOthers = {
  code: 'site-far-from-the-others',
  severity: 'caution',
  summary: 'a site lies far from all others',
  why: 'A wrong digit moves a site by a hundred kilometres, on maps, on labels and in every archive that takes the data over.',
  remedy: 'check the digits of the coordinates; if they are right, there is nothing to do',
  source:
    'the limits, 10 times the median distance from the middle of the sites and 10 km, are proposals of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'sites.csv':
          'site_id,habitat,latitude,longitude\nW1,wood,51.20,9.10\nM1,wood,51.21,9.12\nM2,wood,51.22,9.11\nM3,wood,15.21,9.12\nM4,wood,51.23,9.10\n'
      },
      findings: [
        'sites.csv:5:9: site M3 lies about 4000 km from the middle of the sites; half of them lie within 2 km of it'
      ]
    }
  ],
  *check(_study, index) {
    const placed = placedSites(index.fieldwork.sites)
    if (placed.length < fewestSites) return
    const middle = middleOf(placed)
    const swapped = new Set(swappedSites(placed))
    const distances = placed.map((site) => ({site, metres: greatCircleDistance(site, middle)}))
    const usual = median(distances.map(({metres}) => metres))
    const usualMetres = 'value' in usual ? usual.value : 0
    for (const {site, metres} of distances) {
      if (metres <= farMetres || metres <= farFactor * usualMetres || swapped.has(site)) continue
      // Whole tens of kilometres and no finer: findings are printed, and some sites are kept back.
      yield {
        place: index.place('sites', site.site.row, 'latitude'),
        message: `site ${site.site.siteId} lies about ${Math.round(metres / 10_000) * 10} km from the middle of the sites; half of them lie within ${Math.ceil(usualMetres / 1000)} km of it`
      }
    }
  }
} as const satisfies Rule
