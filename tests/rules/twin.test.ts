import {expect, test} from 'vitest'
import {formatPlace} from '../../src/model/place.ts'
import {parseStudy} from '../../src/parse/parse-study.ts'
import {rules} from '../../src/rules/index.ts'
import {judgeStudy} from '../../src/rules/judge-study.ts'
import {cleanTwin} from '../example-season/make-example.ts'
import {memorySource} from '../memory-source.ts'
import type {Files} from './twin-edits.ts'
import {slips} from './twin-slips.ts'

const twin: Files = cleanTwin()

async function found(files: Files): Promise<readonly string[]> {
  const outcome = await parseStudy(memorySource(files))
  if ('unreadable' in outcome) throw new Error(JSON.stringify(outcome.unreadable))
  return judgeStudy(outcome.study).findings.map(
    ({place, severity, code}) => `${formatPlace(place)} ${severity} ${code}`
  )
}

test('the clean twin of the example study has no finding', async () => {
  expect(await found(twin)).toEqual([])
})

test('every rule has its slip', () => {
  expect(Object.keys(slips).sort()).toEqual(rules.map(({code}) => code).sort())
})

for (const {code} of rules) {
  const {edit, found: expected} = slips[code]
  test(`a slip in the clean twin is found: ${code}`, async () => {
    expect(await found(edit(twin))).toEqual(expected)
    expect(expected.some((line) => line.endsWith(` ${code}`))).toBe(true)
  })
}
