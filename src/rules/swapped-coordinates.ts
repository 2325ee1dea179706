import {placedSites, swappedSites} from './placed-sites.ts'
import type {Rule} from './rule.ts'

export const swappedCoordinates = {
  code: 'swapped-coordinates',
  severity: 'caution',
  summary: 'latitude and longitude of a site seem to have changed places',
  why: 'The site would stand in another country on every map and label, and its distances to the others would be absurd.',
  remedy: 'exchange the two cells in sites.csv',
  source: 'common practice, no source',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'sites.csv':
          'site_id,habitat,latitude,longitude\nW1,wood,51.20,9.10\nM1,wood,9.12,51.21\nM2,wood,51.22,9.11\n'
      },
      findings: [
        'sites.csv:3:9: latitude and longitude of site M1 seem to be swapped: the other way round it lies among the others'
      ]
    }
  ],
  *check(_study, index) {
    for (const {site} of swappedSites(placedSites(index.fieldwork.sites))) {
      yield {
        place: index.place('sites', site.row, 'latitude'),
        message: `latitude and longitude of site ${site.siteId} seem to be swapped: the other way round it lies among the others`
      }
    }
  }
} as const satisfies Rule
