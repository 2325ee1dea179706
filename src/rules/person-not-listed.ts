import type {TableName} from '../model/column.ts'
import {fewOf} from './few-of.ts'
import {numberOf} from './number-of.ts'
import type {Rule} from './rule.ts'

export const personNotListed = {
  code: 'person-not-listed',
  severity: 'note',
  summary: 'the tables name a person who is not among the people of study.yaml',
  why: 'Whoever did the work should be named in the report, and one person under two spellings looks like two.',
  remedy:
    'add the person under `people:` in study.yaml, or write the name as it stands there; initials that fit will do',
  source: 'who identified and who checked belongs in a report: Biological Survey of Canada 2000',
  examples: [
    {files: {}, findings: []},
    {
      files: {
        'study.yaml': 'title: T\npeople: [{name: Ada Ash}, {name: Ben Birch}]\n',
        'catch.csv':
          'trap_id,collected,taxon,count,identified_by\nW1-1,2026-05-18,Carabus problematicus,3,AA\nW1-1,2026-06-01,Abax parallelepipedus,2,A. Ash & B. Birch\n'
      },
      findings: []
    },
    {
      files: {
        'study.yaml': 'title: T\npeople: [{name: Ada Ash}]\n',
        'catch.csv':
          'trap_id,collected,taxon,count,identified_by\nW1-1,2026-05-18,Carabus problematicus,3,Ada Esh\nW1-1,2026-06-01,Abax parallelepipedus,2,CC\n'
      },
      findings: [
        'catch.csv:2:41: 2 people of the tables are not among the people of study.yaml: Ada Esh and CC'
      ]
    }
  ],
  *check({settings: {people = []}, exposures, catch: records}, index) {
    if (people.length === 0) return
    const found = new Map<string, Mention>()
    for (const {row, collectedBy, sortedBy} of exposures) {
      if (collectedBy !== undefined) mention(found, collectedBy, 'visits', row, 'collected_by')
      if (sortedBy !== undefined) mention(found, sortedBy, 'visits', row, 'sorted_by')
    }
    for (const {row, identifiedBy, verifiedBy} of records) {
      if (identifiedBy !== undefined) mention(found, identifiedBy, 'catch', row, 'identified_by')
      if (verifiedBy !== undefined) mention(found, verifiedBy, 'catch', row, 'verified_by')
    }
    const names = people.map(({name}) => wordsOf(name))
    const strangers = new Map<string, Mention>()
    for (const [written, where] of found) {
      for (const person of written.split(/\s*[,;/&+]\s*|\s+(?:and|with)\s+/)) {
        if (!/\p{L}/u.test(person) || names.some((name) => fits(wordsOf(person), name))) continue
        if (!strangers.has(person)) strangers.set(person, where)
      }
    }
    const [first] = strangers.values()
    if (first === undefined) return
    const who = numberOf(strangers.size, 'person', 'people')
    const verb = strangers.size === 1 ? 'is' : 'are'
    yield {
      place: index.place(first.table, first.row, first.column),
      message: `${who} of the tables ${verb} not among the people of study.yaml: ${fewOf([...strangers.keys()])}`
    }
  }
} as const satisfies Rule

interface Mention {
  readonly table: TableName
  readonly row: number
  readonly column: string
}

function mention(
  found: Map<string, Mention>,
  written: string,
  table: TableName,
  row: number,
  column: string
): void {
  if (!found.has(written)) found.set(written, {table, row, column})
}

function wordsOf(name: string): readonly string[] {
  return (
    name
      .normalize('NFD')
      .toLowerCase()
      .match(/[\p{L}\p{M}'’]+/gu) ?? []
  ).map((word) => word.replace(/\p{M}/gu, ''))
}

/** `Ada Ash`, `Ash`, `A. Ash`, `Ash A` and `AA` all fit Ada Ash. */
function fits(written: readonly string[], name: readonly string[]): boolean {
  const initials = name.map(([initial]) => initial).join('')
  const together = written.join('')
  if (together === initials || together === `${initials[0]}${initials.at(-1)}`) return true
  return written.every((word) => name.includes(word) || (word.length === 1 && initials.includes(word)))
}
