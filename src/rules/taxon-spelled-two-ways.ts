import type {Taxon} from '../model/study.ts'
import {numberOf} from './number-of.ts'
import {isOneSlip, oneSlipApart} from './one-slip-apart.ts'
import type {Rule} from './rule.ts'
import type {StudyIndex} from './study-index.ts'

/** More different names than any fauna has are no names, and comparing them would tell nobody anything. */
const mostNames = 20_000

/** Shorter words differ by one letter for good reasons: `Aleochara lata` and `Aleochara laeta` are two kinds. */
const shortestWord = 6

export const taxonSpelledTwoWays = {
  code: 'taxon-spelled-two-ways',
  severity: 'caution',
  summary: 'two names of the catch differ by one slip of the pen',
  why: 'If they are one kind, it counts as two: richness is one too high, and a false singleton raises every estimate of what was missed.',
  remedy:
    'correct one of the two in catch.csv; if both are right, give both their rank in taxa.csv, and an older name its `accepted_name`',
  source: 'common practice, no source',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-18,Carabus problematicus,3\nW1-1,2026-06-01,Carabus problematicus,2\nM1-1,2026-05-18,Carabus problematicsu,2\n',
        'taxa.csv': 'taxon,rank\n'
      },
      findings: [
        'catch.csv:4:17: `Carabus problematicsu` (1 row) is one slip from `Carabus problematicus` (2 rows)'
      ]
    },
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-18,Bembidion assimile,3\nW1-1,2026-06-01,Bembidion assimilis,2\n',
        'taxa.csv': 'taxon,rank\nBembidion assimile,species\nBembidion assimilis,species\n'
      },
      findings: []
    }
  ],
  *check(_study, index) {
    const {caughtNames} = index.fieldwork
    if (caughtNames.size > mostNames) return
    const byLooseName = new Map<string, string>()
    for (const name of caughtNames.keys()) {
      const loose = name.toLowerCase().replace(/\s+/g, ' ')
      if (!/^\p{L}[\p{L}-]+( [\p{L}-]+){0,2}$/u.test(loose)) continue
      const same = byLooseName.get(loose)
      if (same === undefined) byLooseName.set(loose, name)
      else yield* finding(same, name, index)
    }
    for (const [one, other] of oneSlipApart([...byLooseName.keys()])) {
      if (mayBeOneName(one, other)) yield* finding(byLooseName.get(one)!, byLooseName.get(other)!, index)
    }
  }
} as const satisfies Rule

/** One word differs, and it is long enough; families and subfamilies of one name do not count. */
function mayBeOneName(one: string, other: string): boolean {
  const left = one.split(' ')
  const right = other.split(' ')
  if (left.length !== right.length) return false
  const at = left.findIndex((word, position) => word !== right[position])
  const word = left[at] ?? ''
  const counterpart = right[at] ?? ''
  if (Math.max(word.length, counterpart.length) < shortestWord || !isOneSlip(word, counterpart)) return false
  return left.length > 1 || word.slice(-4) === counterpart.slice(-4)
}

function* finding(one: string, other: string, index: StudyIndex) {
  if (isSettled(index.taxa.get(one), index.taxa.get(other))) return
  const {caughtNames} = index.fieldwork
  const byRows = [one, other]
    .map((name) => ({name, ...caughtNames.get(name)!}))
    .sort((a, b) => a.rows - b.rows)
  const [rarer, commoner] = byRows as [(typeof byRows)[0], (typeof byRows)[0]]
  yield {
    place: index.place('catch', rarer.row, 'taxon'),
    message: `\`${rarer.name}\` (${numberOf(rarer.rows, 'row')}) is one slip from \`${commoner.name}\` (${numberOf(commoner.rows, 'row')})`,
    cell: rarer.name,
    related: [{place: index.place('catch', commoner.row), message: 'first so written here'}]
  }
}

/** A name that only one of the two has in taxa.csv is asked about there; two that have their rank, or a synonym, are known. */
function isSettled(one: Taxon | undefined, other: Taxon | undefined): boolean {
  if (one === undefined || other === undefined) return one !== other
  const synonyms = one.acceptedName === other.taxon || other.acceptedName === one.taxon
  return synonyms || (one.rank !== undefined && other.rank !== undefined)
}
