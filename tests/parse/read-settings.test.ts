import {expect, test} from 'vitest'
import {readSettings} from '../../src/parse/read-settings.ts'

/** What is said of one line of study.yaml. */
function said(text: string): readonly (readonly [string, string | undefined])[] {
  const outcome = readSettings('study.yaml', text)
  if ('unreadable' in outcome) throw new Error(outcome.unreadable[0]?.message)
  return outcome.problems.map(({message, remedy}) => [message, remedy])
}

const slips: readonly (readonly [line: string, message: string, remedy: string | undefined])[] = [
  ['title: 2025', '`title` is `2025`; it must be text', 'put it in quotes, `"2025"`, and it is text'],
  [
    'people: Ada Ash',
    '`people` is `Ada Ash`; it must be a list',
    'begin each entry with a hyphen, on a line of its own: `- name: Ada Ash`'
  ],
  [
    'habitats: [oak, hay]',
    '`habitats` is a list; it must be a block of names and values',
    'what belongs there: the habitats compared, by the word used in sites.csv'
  ],
  [
    'trap_types: {cup: {rim_diameter_mm: 7,5}}',
    '`trap_types.cup.5` is not a setting; it is ignored',
    undefined
  ],
  [
    'layout: {spacing_m: "7,5"}',
    '`layout.spacing_m` is `7,5`; it must be a number above 0',
    'write decimals with a point, `7.5`'
  ],
  [
    'layout: {spacing_m: 12 m}',
    '`layout.spacing_m` is `12 m`; it must be a number above 0',
    'write the number alone, `12`: the name of the setting tells its unit'
  ],
  [
    'season: {start: 1.5.2026}',
    '`season.start` is `1.5.2026`; a day is written 2026-05-31',
    'what belongs there: first day of the season'
  ],
  [
    'analysis: {confidence: 95}',
    '`analysis.confidence` is `95`; it must be a number from 0.5 to 0.999',
    'what belongs there: confidence of the intervals; 0.95 where absent'
  ],
  [
    'privacy: {coordinates: extact}',
    '`privacy.coordinates` is `extact`; it must be `exact`, `none`, `0.001`, `0.01` or `0.1`',
    'did you mean `exact`?'
  ],
  [
    'conditions: {trodden: half}',
    '`conditions.trodden` is `half`; it must be a block with `credit:`, `meaning:`',
    'write `trodden: {credit: ..., meaning: ...}`'
  ],
  [
    'words: {condition: {ok: [intact]}}',
    '`words.condition.ok` is a list; it must be text or a number',
    undefined
  ],
  ['protocl: {rounds: 3}', '`protocl` is not a setting; it is ignored', 'did you mean `protocol`?'],
  ['protocol: {round: 3}', '`protocol.round` is not a setting; it is ignored', 'did you mean `rounds`?']
]

for (const [line, message, remedy] of slips) {
  test(`a slip in study.yaml is told in words that need no schema: ${line}`, () => {
    expect(said(line)).toHaveLength(1)
    expect(said(line)[0]![0]).toBe(message)
    if (remedy !== undefined) expect(said(line)[0]![1]).toBe(remedy)
  })
}

test('a list of headers is asked whether they are joined or the first filled one is meant', () => {
  const [[message, remedy] = []] = said('columns: {catch: {trap_id: [Plot, Trap]}}')
  expect(message).toContain('`columns.catch.trap_id` is a list; it must be text, a block with `join:`')
  expect(remedy).toContain('{join: [Plot, Trap], with: "-"} for several columns joined to one')
})

test('no sentence speaks of strings, objects, records or arrays', () => {
  const words = slips.flatMap(([line]) => said(line).flat()).join('\n')
  expect(words).not.toMatch(/\b(string|object|record|array|expected|invalid|undefined|null)\b/)
})
