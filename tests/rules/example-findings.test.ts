import {existsSync, mkdirSync, readFileSync, writeFileSync} from 'node:fs'
import {expect, test} from 'vitest'
import {formatPlace} from '../../src/model/place.ts'
import {parseStudy} from '../../src/parse/parse-study.ts'
import {judgeStudy} from '../../src/rules/judge-study.ts'
import {exampleStudy} from '../example-season/make-example.ts'
import {memorySource} from '../memory-source.ts'

const golden = new URL('../golden/example-findings.txt', import.meta.url)

test('the findings of the example study are those of the golden file; UPDATE=1 rewrites it', async () => {
  const outcome = await parseStudy(memorySource(exampleStudy()))
  if ('unreadable' in outcome) throw new Error(JSON.stringify(outcome.unreadable))
  const lines = judgeStudy(outcome.study).findings.map(
    ({place, severity, code, message}) => `${formatPlace(place)} ${severity} ${code} ${message}\n`
  )
  if (process.env.UPDATE === '1') {
    mkdirSync(new URL('.', golden), {recursive: true})
    writeFileSync(golden, lines.join(''))
  }
  expect(existsSync(golden), 'tests/golden/example-findings.txt is there').toBe(true)
  expect(lines.join('')).toBe(readFileSync(golden, 'utf8'))
})
