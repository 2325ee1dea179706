import {describe, expect, test} from 'vitest'
import type {Column, TableName} from '../../src/model/column.ts'
import {tables} from '../../src/model/columns.ts'
import {type CellOutcome, readCell} from '../../src/parse/read-cell.ts'

function column(table: TableName, name: string): Column {
  const found = tables[table].columns.find((one) => one.name === name)
  if (found === undefined) throw new Error(`${table} has no ${name}`)
  return found
}

function read(table: TableName, name: string, text: string): CellOutcome {
  return readCell(text, column(table, name), {
    order: undefined,
    decimal: undefined,
    conditions: [],
    words: {}
  })
}

describe('what can mean one thing only is read', () => {
  test.each([
    ['sites', 'canopy_percent', '85 %', 85],
    ['sites', 'canopy_percent', '85%', 85],
    ['sites', 'elevation_m', '180 m', 180],
    ['catch', 'life_stage', 'larvae', 'larva'],
    ['catch', 'life_stage', 'L3', 'larva'],
    ['catch', 'life_stage', 'juv.', 'juvenile'],
    ['catch', 'life_stage', 'Adults', 'adult'],
    ['catch', 'sex', '\u2642\u2642', 'male'],
    ['catch', 'sex', '?', 'undetermined'],
    ['catch', 'count', '1\u2009234', 1234]
  ] as const)('%s.%s `%s`', (table, name, text, value) => {
    expect(read(table, name, text)).toEqual({value})
  })
})

describe('what is not read says how it can be', () => {
  test.each([
    ['sites', 'litter_depth_mm', '3 cm', 'unreadable-number', /write the number alone, in mm/],
    [
      'sites',
      'elevation_m',
      'NA',
      'unreadable-number',
      /write `elevation_m: \{"NA": ""\}` in study.yaml, below `words:`/
    ],
    ['sites', 'elevation_m', '#REF!', 'unreadable-number', /mend its formula/],
    ['sites', 'latitude', '51\u00b014\'04"N', 'unreadable-number', /degrees \+ minutes \/ 60/],
    ['catch', 'pooled_traps', 'two', 'unreadable-number', /plain digits/],
    ['catch', 'count', '-', 'count-not-whole', /`count: \{"-": 0\}` in study.yaml, below `words:`/],
    ['catch', 'count', 'x', 'count-not-whole', /how many is not said/],
    ['catch', 'count', '2m 1f', 'count-not-whole', /one row for each sex/],
    ['catch', 'count', '10-20', 'count-not-whole', /write one number/],
    ['catch', 'count', '=SUM(D2:D9)', 'count-not-whole', /this is a formula/],
    ['catch', 'sex', 'w', 'unknown-word', /say once which of them it stands for: `sex: \{w: \.\.\.\}`/],
    ['catch', 'sex', 'n/a', 'unknown-word', /`sex: \{n\/a: ""\}`/],
    [
      'visits',
      'condition',
      'OK',
      'unknown-condition',
      /did you mean `intact`\?.*`condition: \{OK: intact\}`/
    ],
    ['visits', 'sample', 'none', 'unknown-word', /did you mean `empty`\?/],
    ['catch', 'taxon', 'Total', 'totals-row', undefined],
    ['weather', 'date', 'Summe:', 'totals-row', undefined]
  ] as const)('%s.%s `%s`', (table, name, text, code, remedy) => {
    const outcome = read(table, name, text)
    expect(outcome).toMatchObject({code})
    if (remedy !== undefined) expect('remedy' in outcome && outcome.remedy).toMatch(remedy)
  })

  test('a life stage that cannot be read sets its row aside: nobody may count it as an adult', () => {
    expect(column('catch', 'life_stage').decisive).toBe(true)
  })
})
