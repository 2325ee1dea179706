import {nearestName} from '../model/nearest-name.ts'
import type {Rule} from './rule.ts'

export const unknownTrapTypeOrFluid = {
  code: 'unknown-trap-type-or-fluid',
  severity: 'caution',
  summary: 'a trap names a type or fluid that study.yaml does not describe, or none where there are several',
  why: 'The methods cannot say what the trap was, and a difference between habitats may go unseen.',
  remedy: 'describe it under `trap_types:` or `fluids:` in study.yaml, or correct the word in traps.csv',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'traps.csv': 'trap_id,site_id,trap_type\nW1-1,W1,cup\nM1-1,M1,cups\n'},
      findings: ['traps.csv:3:9: `cups` is not described under `trap_types:` in study.yaml']
    },
    {
      files: {
        'study.yaml': 'title: T\ntrap_types: {cup: {rim_diameter_mm: 75}, jar: {rim_diameter_mm: 90}}\n',
        'traps.csv': 'trap_id,site_id\nW1-1,W1\nM1-1,M1\n'
      },
      findings: ['traps.csv:2:1: 2 traps name none of the trap types of study.yaml (cup, jar)']
    }
  ],
  *check({traps, exposures, settings}, index) {
    for (const [column, key, described, words] of [
      ['trap_type', 'trapType', settings.trap_types ?? {}, {setting: 'trap_types', many: 'trap types'}],
      ['fluid', 'fluid', settings.fluids ?? {}, {setting: 'fluids', many: 'fluids'}]
    ] as const) {
      const known = Object.keys(described)
      if (known.length === 0) continue
      const rows = [
        ...traps.map((trap) => ({table: 'traps' as const, row: trap.row, word: trap[key]})),
        ...(key === 'fluid'
          ? exposures
              .filter(({fluid}) => fluid !== undefined)
              .map(({row, fluid}) => ({table: 'visits' as const, row, word: fluid}))
          : [])
      ]
      for (const {table, row, word} of rows) {
        if (word === undefined || known.includes(word)) continue
        const meant = nearestName(word, known)
        yield {
          place: index.place(table, row, column),
          message: `\`${word}\` is not described under \`${words.setting}:\` in study.yaml`,
          cell: word,
          ...(meant !== undefined && {remedy: `did you mean \`${meant}\`?`})
        }
      }
      const unnamed = traps.filter((trap) => trap[key] === undefined)
      const [first] = unnamed
      if (first !== undefined && known.length > 1) {
        yield {
          place: index.place('traps', first.row, 'trap_id'),
          message: `${unnamed.length} ${unnamed.length === 1 ? 'trap names' : 'traps name'} none of the ${words.many} of study.yaml (${known.join(', ')})`
        }
      }
    }
  }
} as const satisfies Rule
