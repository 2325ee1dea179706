import {grouped} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import {isOneSlip} from './one-slip-apart.ts'
import type {Rule} from './rule.ts'

/** Shorter words differ by one letter for good reasons: `bog` and `fog`, plots `A` and `B`. */
const shortestWord = 5

export const habitatSpelledTwoWays = {
  code: 'habitat-spelled-two-ways',
  severity: 'caution',
  summary: 'two habitats of sites.csv differ by one slip of the pen, by case or by a space',
  why: 'If they are one habitat, its sites are counted apart: both look under-sampled, and a test may fall away.',
  remedy:
    'give the sites of one habitat the same word; if both are right, name all habitats under `habitats:` in study.yaml',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'study.yaml': 'title: T\n',
        'sites.csv': 'site_id,habitat\nW1,wood\nM1,Wood \n'
      },
      findings: ['sites.csv:3:4: habitat `Wood` (1 site) is nearly `wood` (1 site)']
    },
    {
      files: {
        'study.yaml': 'habitats: {wood: Old wood, Wood: New wood}\n',
        'sites.csv': 'site_id,habitat\nW1,wood\nM1,Wood\n'
      },
      findings: []
    }
  ],
  *check({settings}, index) {
    // Against a list of habitats every word is right or unknown.
    if (settings.habitats !== undefined) return
    const sitesOf = grouped(index.fieldwork.sites, ({habitat}) => habitat)
    const found = [...sitesOf.keys()]
    for (const [position, later] of found.entries()) {
      const earlier = found.slice(0, position).find((other) => mayBeOne(other, later))
      if (earlier === undefined) continue
      const [rarer, commoner] =
        sitesOf.get(later)!.length <= sitesOf.get(earlier)!.length ? [later, earlier] : [earlier, later]
      const [first] = sitesOf.get(rarer)!
      yield {
        place: index.place('sites', first!.row, 'habitat'),
        message: `habitat \`${rarer}\` (${numberOf(sitesOf.get(rarer)!.length, 'site')}) is nearly \`${commoner}\` (${numberOf(sitesOf.get(commoner)!.length, 'site')})`,
        cell: rarer
      }
    }
  }
} as const satisfies Rule

function mayBeOne(one: string, other: string): boolean {
  const [left, right] = [one, other].map((habitat) => habitat.toLowerCase().replace(/[\s_-]+/g, ' '))
  return left === right || (Math.min(one.length, other.length) >= shortestWord && isOneSlip(left!, right!))
}
