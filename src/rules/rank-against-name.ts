import {fewOf} from './few-of.ts'
import {grouped} from './fieldwork.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

export const rankAgainstName = {
  code: 'rank-against-name',
  severity: 'caution',
  summary: 'the rank of a name cannot be right',
  why: 'The rank decides what counts as a species: a genus called a species makes the list one longer, a species called a genus drops out of it.',
  remedy:
    'correct `rank` or the name in taxa.csv; a kind told apart without a name has the rank `morphospecies`',
  source:
    'a species name is of two words: International Code of Zoological Nomenclature, article 5 (from memory)',
  examples: [
    {
      files: {
        'taxa.csv':
          'taxon,rank\nCarabus problematicus,species\nAbax parallelepipedus,species\nAmara sp.,genus\nAmara (Amara) aenea,species\nStenus sp. 1,morphospecies\n'
      },
      findings: []
    },
    {
      files: {'taxa.csv': 'taxon,rank\nCarabus problematicus,species\nAbax,species\n'},
      findings: ['taxa.csv:3:6: 1 name of rank species does not name one: Abax']
    },
    {
      files: {'taxa.csv': 'taxon,rank\nCarabus problematicus,genus\nAbax parallelepipedus,genus\n'},
      findings: [
        'taxa.csv:2:23: 2 names of rank genus name a species: Carabus problematicus and Abax parallelepipedus'
      ]
    }
  ],
  *check({taxa}, index) {
    const wrong = taxa.flatMap(({taxon, row, rank = ''}) => {
      const word = rank.trim().toLowerCase()
      const fault = faultOf(word, taxon)
      return fault === undefined ? [] : [{taxon, row, word, fault}]
    })
    for (const group of grouped(wrong, ({word}) => word).values()) {
      const {row, word, fault} = group[0]!
      yield {
        place: index.place('taxa', row, 'rank'),
        message: `${numberOf(group.length, 'name')} of rank ${word} ${fault(group.length)}: ${fewOf(group.map(({taxon}) => taxon))}`
      }
    }
  }
} as const satisfies Rule

const wholeGroups = new Set([
  'genus',
  'subgenus',
  'family',
  'subfamily',
  'superfamily',
  'tribe',
  'order',
  'suborder',
  'class'
])

function faultOf(rank: string, name: string): ((names: number) => string) | undefined {
  // A subgenus in brackets and words of doubt are no part of the name.
  const words = name.split(/\s+/).filter((word) => !/^\(.*\)$|^(cf|aff|nr)\.?$/i.test(word))
  const epithet = words[1] ?? ''
  const namesSpecies = /^\p{Ll}[\p{Ll}-]+$/u.test(epithet) && !/^(spp?|indet|gen)$/.test(epithet)
  if (rank === 'species' && !namesSpecies)
    return (names) => (names === 1 ? 'does not name one' : 'do not name one')
  if (wholeGroups.has(rank) && namesSpecies)
    return (names) => (names === 1 ? 'names a species' : 'name a species')
  return undefined
}
