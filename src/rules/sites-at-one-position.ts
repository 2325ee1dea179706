import {fewOf} from './few-of.ts'
import {grouped} from './fieldwork.ts'
import {placedSites} from './placed-sites.ts'
import type {Rule} from './rule.ts'

export const sitesAtOnePosition = {
  code: 'sites-at-one-position',
  severity: 'caution',
  summary: 'two sites have the same position',
  why: 'Sites are what the analysis takes as independent; at one position they are one site, or a cell was copied down.',
  remedy: 'correct the coordinates; if it is one site, give it one `site_id`',
  source:
    'which level is the replicate: Hurlbert 1984 (from memory); copied coordinates are an especially common error of labels: Mississippi Entomological Museum 2016',
  examples: [
    {files: {}, findings: []},
    {
      files: {'sites.csv': 'site_id,habitat,latitude,longitude\nW1,wood,51.20,9.10\nM1,wood,51.20,9.10\n'},
      findings: ['sites.csv:3:9: sites W1 and M1 have the same position']
    }
  ],
  *check(_study, index) {
    const placed = placedSites(index.fieldwork.sites)
    for (const together of grouped(placed, ({latitude, longitude}) => `${latitude} ${longitude}`).values()) {
      const [first, second] = together
      if (first === undefined || second === undefined) continue
      yield {
        place: index.place('sites', second.site.row, 'latitude'),
        message: `sites ${fewOf(together.map(({site}) => site.siteId))} have the same position`,
        related: [{place: index.place('sites', first.site.row, 'latitude'), message: 'first here'}]
      }
    }
  }
} as const satisfies Rule
