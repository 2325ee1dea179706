import {expect, test} from 'vitest'
import type {Finding} from '../../src/model/finding.ts'
import {checkedResults, numberOf, tinyStudy, twoPlaces} from './tiny-study.ts'

const finding = (code: string, severity: Finding['severity']): Finding => {
  return {code, severity, place: {file: 'visits.csv', line: 2}, message: 'm', why: `why ${code}`, remedy: 'r'}
}

test('the balance of rows and the counts of findings are those of the check', () => {
  const {records} = checkedResults({
    ...tinyStudy(twoPlaces),
    findings: [
      finding('late', 'note'),
      finding('visit-without-catch-record', 'error'),
      finding('late', 'note'),
      finding('early', 'note')
    ],
    balance: [
      {table: 'catch', file: 'catch.csv', readAs: 'UTF-8, comma', read: 8, used: 8, setAside: 0, byCode: {}},
      {
        table: 'visits',
        file: 'visits.csv',
        readAs: 'Windows-1252, semicolon',
        read: 11,
        used: 8,
        setAside: 3,
        byCode: {'visit-without-catch-record': 2, another: 1}
      }
    ]
  })
  expect(
    records.tables.map(({table, readAs, read, used, setAside}) => [
      table,
      readAs,
      ...[read, used, setAside].map(numberOf)
    ])
  ).toEqual([
    ['visits', 'Windows-1252, semicolon', 11, 8, 3],
    ['catch', 'UTF-8, comma', 8, 8, 0]
  ])
  expect(records.tables[0]!.reasons.map(({code, rows}) => [code, numberOf(rows)])).toEqual([
    ['another', 1],
    ['visit-without-catch-record', 2]
  ])
  expect(Object.values(records.findings).map(numberOf)).toEqual([1, 0, 3, 4])
  expect([records.readRows, records.usedRows, records.setAsideRows].map(numberOf)).toEqual([19, 16, 3])
  expect(numberOf(records.leftUnrecorded)).toBe(2)
  expect(
    records.byCode.map(({code, severity, findings, summary}) => [code, severity, numberOf(findings), summary])
  ).toEqual([
    ['visit-without-catch-record', 'error', 1, 'why visit-without-catch-record'],
    ['early', 'note', 1, 'why early'],
    ['late', 'note', 2, 'why late']
  ])
})
