import {expect, test} from 'vitest'
import {rules} from '../../src/rules/index.ts'
import type {Rule} from '../../src/rules/rule.ts'
import {run} from './captured-terminal.ts'

test('every rule is explained with remedy, reason, source and an example that shows it', async () => {
  for (const {code, severity, examples} of rules as readonly Rule[]) {
    const explained = await run(['explain', code])
    expect(explained).toMatchObject({code: 0, err: ''})
    expect(explained.out).toContain(`---- ${severity}  ${code} ---`)
    for (const label of ['mend', 'why', 'source'])
      expect(explained.out).toMatch(new RegExp(`^  ${label} +\\S`, 'm'))
    const shows = examples.some(({findings}) => findings.length > 0)
    expect(explained.out.includes('\n  gives\n')).toBe(shows)
  }
})

test('without a code every code is listed with its summary, errors first', async () => {
  const {code, out} = await run(['explain'])
  expect(code).toBe(0)
  for (const rule of rules) expect(out).toMatch(new RegExp(`^  ${rule.code}\n    \\S`, 'm'))
  expect(out.indexOf('error  ')).toBeLessThan(out.indexOf('caution  '))
})

test('codes of the reader and of the documents are explained too', async () => {
  for (const code of ['missing-table', 'missing-column', 'unknown-name-in-text']) {
    expect((await run(['explain', code])).out).toContain('mend')
  }
})

test('an unknown code is answered with the nearest one, or with how to see them all', async () => {
  const near = await run(['explain', 'duplicat-visit'])
  expect(near).toMatchObject({code: 2, out: ''})
  expect(near.err).toContain('Did you mean `pitfolio explain duplicate-visit`?')
  expect((await run(['explain', 'xyzzy'])).err).toContain('`pitfolio explain` lists every code')
})
