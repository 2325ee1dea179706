import {nearestName} from '../model/nearest-name.ts'
import type {Rule} from './rule.ts'
import {reference} from './study-index.ts'

export const unknownHabitat = {
  code: 'unknown-habitat',
  severity: 'error',
  summary: 'a site names a habitat that study.yaml does not have',
  why: 'Habitats are what the report compares; a misspelt one would stand beside the right one as a habitat of its own.',
  remedy: 'correct the spelling in sites.csv, or add the habitat under `habitats:` in study.yaml',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'sites.csv': 'site_id,habitat\nW1,wood\nM1,medow\n'},
      findings: ['sites.csv:3:4: `medow` is not a habitat of study.yaml']
    }
  ],
  *check({sites, settings}, index) {
    if (settings.habitats === undefined) return
    const known = Object.keys(settings.habitats)
    for (const site of sites) {
      if (known.includes(site.habitat)) continue
      const meant = nearestName(site.habitat, known)
      yield {
        place: index.place('sites', site.row, 'habitat'),
        message: `\`${site.habitat}\` is not a habitat of study.yaml`,
        cell: site.habitat,
        ...(meant !== undefined && {remedy: `did you mean \`${meant}\`?`}),
        setsAside: [reference('sites', site)]
      }
    }
  }
} as const satisfies Rule
