import type {Settings} from '../model/settings.ts'
import type {Taxon} from '../model/study.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

const vertebrateGroups = new Set([
  'mammalia',
  'amphibia',
  'reptilia',
  'aves',
  'rodentia',
  'eulipotyphla',
  'soricomorpha',
  'insectivora',
  'anura',
  'urodela',
  'caudata',
  'squamata',
  'passeriformes'
])

/** The usual ones of wet traps, for studies whose taxa.csv says nothing of them. */
const vertebrateGenera = new Set([
  'Sorex',
  'Neomys',
  'Crocidura',
  'Apodemus',
  'Microtus',
  'Myodes',
  'Rana',
  'Bufo',
  'Lissotriton',
  'Triturus',
  'Zootoca',
  'Lacerta',
  'Anguis'
])

/** Everyday words, unless they are half of an insect's name: froghopper, toad bug, mouse spider. */
const vertebrateWords =
  /\b(shrew|vole|frog|newt|toad|lizard|mouse|mice)s?\b(?![ -]?(hopper|bug|spider|beetle|fly|moth|mite))/i

export const vertebrateInCatch = {
  code: 'vertebrate-in-catch',
  severity: 'caution',
  summary: 'a vertebrate stands in the catch',
  why: 'It would count as one more kind of the catch, and be missing from the vertebrates caught by accident, which must be reported.',
  remedy:
    'move it to visits.csv: `vertebrates_count`, `vertebrates_what` and `vertebrates_fate` of its visit',
  source: 'vertebrate by-catch must be reported clearly: Thompson & Thompson 2008',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'catch.csv':
          'trap_id,collected,taxon,count\nW1-1,2026-05-18,common shrew,1\nW1-1,2026-06-01,Abax parallelepipedus,2\n'
      },
      findings: ['catch.csv:2:17: `common shrew` is a vertebrate (1 row)']
    },
    {
      files: {
        'catch.csv': 'trap_id,collected,taxon,count\nW1-1,2026-05-18,Sorex araneus,1\n',
        'taxa.csv': 'taxon,rank,class\nSorex araneus,species,Mammalia\n'
      },
      findings: ['catch.csv:2:17: `Sorex araneus` is a vertebrate (1 row)']
    }
  ],
  *check({settings}, index) {
    for (const [name, {row, rows}] of index.fieldwork.caughtNames) {
      const taxon = index.taxa.get(name)
      if (!isVertebrate(name, taxon) || isTarget(name, taxon, settings)) continue
      yield {
        place: index.place('catch', row, 'taxon'),
        message: `\`${name}\` is a vertebrate (${numberOf(rows, 'row')})`,
        cell: name
      }
    }
  }
} as const satisfies Rule

function isVertebrate(name: string, taxon: Taxon | undefined): boolean {
  const groups = [taxon?.class, taxon?.order].filter((group) => group !== undefined)
  if (groups.length > 0) return groups.some((group) => vertebrateGroups.has(group.toLowerCase()))
  return (
    vertebrateGroups.has(name.toLowerCase()) ||
    vertebrateGenera.has(name.split(' ')[0] ?? '') ||
    vertebrateWords.test(name)
  )
}

function isTarget(name: string, taxon: Taxon | undefined, {target}: Settings): boolean {
  const groups = new Set((target?.groups ?? []).map((group) => group.toLowerCase()))
  return [name, taxon?.class, taxon?.order, taxon?.family].some((group) =>
    groups.has(group?.toLowerCase() ?? '')
  )
}
