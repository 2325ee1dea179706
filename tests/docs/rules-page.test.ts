import {readFileSync} from 'node:fs'
import {expect, test} from 'vitest'
import {rulesPage} from './rules-page.ts'

test('templates/docs/rules.md says what the rules say; tests/docs/write-rules-page.ts rewrites it', () => {
  expect(readFileSync(new URL('../../templates/docs/rules.md', import.meta.url), 'utf8')).toBe(rulesPage())
})
