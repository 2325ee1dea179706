import type {Rule} from './rule.ts'

export const siteWithoutEffort = {
  code: 'site-without-effort',
  severity: 'caution',
  summary: 'in old data without visits, a site has no effort figure',
  why: 'Its catch stays on the species lists but outside the effort: in no rate, no diversity, no test.',
  remedy: 'fill `trap_nights` in sites.csv, if the old notes say',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'sites.csv': 'site_id,habitat,trap_nights\nW1,wood,700\nW2,wood,\n',
        'catch.csv': 'site_id,taxon,count\nW1,Carabus problematicus,3\nW2,Abax parallelepipedus,2\n'
      },
      without: ['traps.csv', 'visits.csv'],
      findings: ['sites.csv:3:9: site `W2` has no trap-nights']
    }
  ],
  *check({sites, effortBySite}, index) {
    if (!effortBySite) return
    for (const {row, siteId, trapNights} of sites) {
      if (trapNights !== undefined) continue
      yield {
        place: index.place('sites', row, 'trap_nights'),
        message: `site \`${siteId}\` has no trap-nights`
      }
    }
  }
} as const satisfies Rule
