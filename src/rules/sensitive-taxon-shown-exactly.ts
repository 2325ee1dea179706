import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'
import type {StudyIndex} from './study-index.ts'

/** Degrees to which the report shows a place with a taxon of each category. Chapman 2020, table 7. */
const shownAs: Readonly<Record<number, string>> = {
  1: 'keeps the position back',
  2: 'shows the position to 0.1 degrees',
  3: 'shows the position to 0.01 degrees',
  4: 'shows the position to 0.001 degrees'
}

export const sensitiveTaxonShownExactly = {
  code: 'sensitive-taxon-shown-exactly',
  severity: 'note',
  summary: 'an exact position is asked for where a sensitive taxon was caught',
  why: 'The report does not show the position as finely as asked for, because others read it too; the raw files of the study still hold it.',
  remedy:
    'nothing, if that is as you wish; else change `sensitive` in taxa.csv, or `coordinates_shown` of the site so that it says what is done',
  source: 'Chapman 2020, table 7: generalise, do not randomise, and say what was done',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'sites.csv':
          'site_id,habitat,latitude,longitude,coordinates_shown\nW1,wood,51.20,9.10,exact\nM1,wood,51.21,9.12,exact\n',
        'taxa.csv': 'taxon,rank,sensitive\nCarabus problematicus,species,2\nAbax parallelepipedus,species,\n'
      },
      findings: [
        'sites.csv:2:20: the exact position of site W1 is asked for, but a taxon of sensitivity 2 was caught there; the report shows the position to 0.1 degrees'
      ]
    },
    {
      files: {
        'study.yaml': 'title: T\nprivacy: {coordinates: exact}\n',
        'taxa.csv': 'taxon,rank,sensitive\nCarabus problematicus,species,2\nAbax parallelepipedus,species,\n'
      },
      findings: [
        'study.yaml:2:24: exact positions are asked for, but sensitive taxa were caught at 1 site; the report shows those less finely'
      ]
    }
  ],
  *check({settings, settingPlace}, index) {
    const exact = index.fieldwork.sites.filter(({coordinatesShown, latitude, longitude}) => {
      if (latitude === undefined || longitude === undefined) return false
      return (coordinatesShown ?? settings.privacy?.coordinates) === 'exact'
    })
    if (exact.length === 0) return
    const strictest = strictestBySite(index)
    const concerned = exact.flatMap((site) => {
      const category = strictest.get(site.siteId)
      return category === undefined ? [] : [{site, category}]
    })
    // Taxa are not named: findings are printed, and a name beside a site would give away what this is about.
    for (const {site, category} of concerned.filter(
      ({site: {coordinatesShown}}) => coordinatesShown === 'exact'
    )) {
      yield {
        place: index.place('sites', site.row, 'coordinates_shown'),
        message: `the exact position of site ${site.siteId} is asked for, but a taxon of sensitivity ${category} was caught there; the report ${shownAs[category]}`
      }
    }
    const byStudy = concerned.filter(({site: {coordinatesShown}}) => coordinatesShown === undefined)
    if (byStudy.length === 0) return
    yield {
      place: settingPlace(['privacy', 'coordinates']),
      message: `exact positions are asked for, but sensitive taxa were caught at ${numberOf(byStudy.length, 'site')}; the report shows those less finely`
    }
  }
} as const satisfies Rule

function strictestBySite({taxa, traps, fieldwork}: StudyIndex): ReadonlyMap<string, number> {
  const sensitivity = new Map<string, number>()
  for (const [name, {sensitive, acceptedName}] of taxa) {
    const category = sensitive ?? taxa.get(acceptedName ?? '')?.sensitive
    if (category !== undefined) sensitivity.set(name, category)
  }
  const strictest = new Map<string, number>()
  if (sensitivity.size === 0) return strictest
  for (const {taxon, count, trapId, siteId} of fieldwork.catch) {
    const category = sensitivity.get(taxon)
    const site = trapId === undefined ? siteId : traps.get(trapId)?.siteId
    if (category === undefined || site === undefined || count === 0) continue
    strictest.set(site, Math.min(category, strictest.get(site) ?? category))
  }
  return strictest
}
