import {readdirSync} from 'node:fs'
import {describe, expect, test} from 'vitest'
import {formatPlace} from '../../src/model/place.ts'
import {parseStudy} from '../../src/parse/parse-study.ts'
import {baseStudy} from '../../src/rules/base-study.ts'
import {rules} from '../../src/rules/index.ts'
import {judgeStudy} from '../../src/rules/judge-study.ts'
import type {Rule} from '../../src/rules/rule.ts'
import {memorySource} from '../memory-source.ts'

const infrastructure = new Set([
  'base-study.ts',
  'catch-key.ts',
  'failed-exposure.ts',
  'few-of.ts',
  'fieldwork.ts',
  'fluid-kind.ts',
  'habitat-intervals.ts',
  'index.ts',
  'judge-study.ts',
  'nights-open.ts',
  'number-of.ts',
  'one-slip-apart.ts',
  'placed-sites.ts',
  'problems-of.ts',
  'rule.ts',
  'same-cells.ts',
  'study-index.ts'
])

async function judge(files: Readonly<Record<string, string>>, without: readonly string[] = []) {
  const all = Object.entries({...baseStudy, ...files}).filter(([path]) => !without.includes(path))
  const outcome = await parseStudy(memorySource(Object.fromEntries(all)))
  if ('unreadable' in outcome) throw new Error(JSON.stringify(outcome.unreadable))
  return judgeStudy(outcome.study)
}

test('every rule file is in the list, under its own name', () => {
  const files = readdirSync(new URL('../../src/rules', import.meta.url)).filter(
    (name) => !infrastructure.has(name)
  )
  expect(rules.map(({code}) => `${code}.ts`).sort()).toEqual(files.sort())
})

test('the base study has no finding, and every row of it is used', async () => {
  const {findings, balance} = await judge({})
  expect(findings).toEqual([])
  expect(balance.map(({read, used}) => read - used)).toEqual([0, 0, 0, 0, 0])
})

for (const rule of rules as readonly Rule[]) {
  describe(rule.code, () => {
    for (const [index, {files, without, findings}] of rule.examples.entries()) {
      test(`example ${index + 1} gives ${findings.length === 0 ? 'no finding' : findings.join(' | ')}`, async () => {
        const judged = await judge(files, without)
        const found = judged.findings.filter(({code}) => code === rule.code)
        expect(found.map(({place, message}) => `${formatPlace(place)}: ${message}`)).toEqual(findings)
      })
    }
    test('has an example that passes and a reason, a remedy and a source in words', () => {
      expect(rule.examples.some(({findings}) => findings.length === 0)).toBe(true)
      for (const words of [rule.summary, rule.why, rule.remedy, rule.source])
        expect(words.length).toBeGreaterThan(10)
    })
  })
}

test('rows read are rows used plus rows set aside, also when one slip takes others with it', async () => {
  const {balance, study} = await judge({'traps.csv': 'trap_id,site_id\nW1-1,W11\nM1-1,M1\n'})
  expect(balance.map(({table, read, used, setAside}) => [table, read, used, setAside])).toEqual([
    ['sites', 2, 2, 0],
    ['traps', 2, 1, 1],
    ['visits', 11, 1, 10],
    ['catch', 2, 0, 2],
    ['taxa', 2, 2, 0]
  ])
  expect(study.catch).toEqual([])
})

test('a study may judge a rule otherwise, and a row that is no longer an error is used', async () => {
  const early = {'visits.csv': 'trap_id,opened,collected,sample\nW1-1,2026-04-04,2026-05-18,sorted\n'}
  const strict = await judge(early)
  expect(strict.study.exposures).toEqual([])
  const mild = await judge({
    ...early,
    'study.yaml': `${baseStudy['study.yaml']}rules: {visit-outside-season: {severity: note, reason: opened before the season by plan}}\n`
  })
  expect(mild.study.exposures).toHaveLength(1)
  expect(mild.findings.find(({code}) => code === 'visit-outside-season')?.severity).toBe('note')
})
