import {fewOf} from './few-of.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

const fewestTraps = 5

export const fewTrapsAtASite = {
  code: 'few-traps-at-a-site',
  severity: 'caution',
  summary: 'a site has fewer than five traps',
  why: 'With so few traps one lost cup or one ant nest decides what the site seems to be. Nine or ten are ideal; from five on nothing is said, because that is common practice.',
  remedy: 'say it in `limitations`; next time set at least five traps at every site',
  source: 'groups of at least 5, ideally 9 to 10: UK practitioner protocol (Telfer, revised 2009)',
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': 'trap_id,site_id\nW1-1,W1\nW1-2,W1\nM1-1,M1\n'},
      findings: ['sites.csv:2:1: 2 sites have fewer than 5 traps: W1 (2) and M1 (1)']
    }
  ],
  *check(_study, index) {
    const few = [...index.fieldwork.trapsOfSite.values()].filter(({length}) => length < fewestTraps)
    const site = few[0]?.[0]?.site
    if (site === undefined) return
    const names = few.map((traps) => `${traps[0]!.site.siteId} (${traps.length})`)
    yield {
      place: index.place('sites', site.row, 'site_id'),
      message: `${numberOf(few.length, 'site')} ${few.length === 1 ? 'has' : 'have'} fewer than ${fewestTraps} traps: ${fewOf(names)}`
    }
  }
} as const satisfies Rule
