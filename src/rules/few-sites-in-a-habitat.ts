import {fewOf} from './few-of.ts'
import {grouped} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

export const fewSitesInAHabitat = {
  code: 'few-sites-in-a-habitat',
  severity: 'note',
  summary: 'a habitat has too few sites for a test',
  why: 'Sites are the replicates, not traps. With one site in a habitat no test is possible; with three in each of two habitats no permutation test can go below p = 0.10.',
  remedy: 'describe such a habitat and test nothing on it; next time choose at least four sites in each',
  source:
    'Hurlbert 1984 (from memory); number of permutations computed: two groups of three can be split in 10 ways, of four in 35',
  examples: [
    {files: {}, findings: []},
    {
      files: {'sites.csv': 'site_id,habitat\nW1,wood\nM1,meadow\n'},
      findings: ['sites.csv:2:4: no test of habitats is possible with 1 site in wood and 1 in meadow']
    },
    {
      files: {'sites.csv': 'site_id,habitat\nW1,wood\nW2,wood\nM1,meadow\nM2,meadow\nM3,meadow\nM4,meadow\n'},
      findings: ['sites.csv:2:4: few sites for a test of habitats: 2 in wood']
    }
  ],
  *check(_study, {fieldwork: {sites, habitats}, place}) {
    if (habitats.length < 2) return
    const bySize = grouped(sites, ({habitat}) => habitat)
    const few = habitats.flatMap((habitat) => {
      const own = bySize.get(habitat) ?? []
      return own.length < 4 ? [{habitat, sites: own.length, first: own[0]}] : []
    })
    const single = few.filter(({sites: number}) => number < 2)
    const named = single.length > 0 ? single : few
    const first = named[0]?.first
    if (first === undefined) return
    if (single.length > 0) {
      const names = single.map(({habitat}, at) =>
        at === 0 ? `${numberOf(1, 'site')} in ${habitat}` : `1 in ${habitat}`
      )
      const message = `no test of habitats is possible with ${fewOf(names)}`
      yield {place: place('sites', first.row, 'habitat'), message, severity: 'caution'}
      return
    }
    const names = few.map(({habitat, sites: number}) => `${number} in ${habitat}`)
    yield {
      place: place('sites', first.row, 'habitat'),
      message: `few sites for a test of habitats: ${fewOf(names)}`
    }
  }
} as const satisfies Rule
