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
  ['decimal: ","', '`decimal` is `,`; it must be `point` or `comma`', 'did you mean `comma`?'],
  ['dates: d/m/y', '`dates` is `d/m/y`; it must be `dmy` or `mdy`', 'did you mean `dmy`?'],
  [
    'encoding: ANSI',
    '`encoding` is `ANSI`; it must be `utf-8`, `utf-16le`, `utf-16be` or `windows-1252`',
    'did you mean `windows-1252`?'
  ],
  [
    'dates: \u2018dmy\u2019',
    '`dates` is `\u2018dmy\u2019`; it must be `dmy` or `mdy`',
    "these are printers' quotation marks, which are part of the text here: write `dmy` without them"
  ],
  [
    '\u00a0\u00a0wood: oak',
    '`wood` is indented with hard spaces, as word processors and web pages have them; it is ignored',
    'delete what stands before the name and type spaces'
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

const broken: readonly (readonly [yaml: string, line: number, message: string, remedy: RegExp])[] = [
  [
    'title: T\nhabitats:\n\twood: Wood\n',
    3,
    'this line is indented with a tab, which YAML does not allow',
    /spaces/
  ],
  ['title: A\nfunding: B\ntitle: C\n', 3, '`title` stands twice, first in line 1', /into one place/],
  [
    'title: Beetles: a study\n',
    1,
    'a colon stands within a text that is not in quotes',
    /`title: "Beetles: a study"`/
  ],
  ['title: T\nthanks: @farmer\n', 2, '`@` cannot begin a text in YAML', /`thanks: "@farmer"`/],
  [
    'title: *beetles* of the wood\n',
    1,
    '`*` cannot begin a text in YAML',
    /`title: "\*beetles\* of the wood"`/
  ],
  ['title:T\nhabitats: {wood: oak}\n', 2, 'no space stands behind the colon in line 1', /`title: T`/],
  [
    'title: T\n habitats:\n  wood: oak\n',
    2,
    'this line does not begin where it must: 1 space before it, 0 before the line above',
    /two spaces further in/
  ],
  [
    'people:\n- name: A\n  orcid: x\n role: y\n',
    4,
    'this line does not begin where it must: 1 space before it, 2 before the line above',
    /two spaces further in/
  ],
  [
    'files: {catch: "C:\\season\\catch.csv"}\n',
    1,
    'a backslash in double quotes means something else in YAML',
    /`\/` between folders/
  ]
]

for (const [yaml, line, message, remedy] of broken) {
  test(`what is no YAML is told by what stands in the line: ${JSON.stringify(yaml)}`, () => {
    const outcome = readSettings('study.yaml', yaml)
    if (!('unreadable' in outcome)) throw new Error('it was read')
    expect(outcome.unreadable).toHaveLength(1)
    expect(outcome.unreadable[0]).toMatchObject({
      message,
      place: {line},
      remedy: expect.stringMatching(remedy)
    })
  })
}
