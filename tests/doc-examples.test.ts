import {readdirSync, readFileSync} from 'node:fs'
import {describe, expect, test} from 'vitest'

const FOLDER = new URL('../src/statistics/', import.meta.url)

/** Parts that statistics are built from: no statistic of their own, so no source or worked example to give. */
const INFRASTRUCTURE = new Set([
  'absence-probability.ts',
  'binomial-draw.ts',
  'bootstrap-replicates.ts',
  'chao-lower-bound.ts',
  'draw-sample.ts',
  'estimated-assemblage.ts',
  'expected-diversity.ts',
  'expected-entropy.ts',
  'infrequent-estimate.ts',
  'logarithmic-tail.ts',
  'random-stream.ts',
  'special-functions.ts'
])

const files = readdirSync(FOLDER).filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))

// Examples may call any statistic: most begin with frequencyCounts.
const everything: Record<string, unknown> = {}
for (const name of files) Object.assign(everything, await import(`../src/statistics/${name}`))

function evaluate(code: string): unknown {
  return new Function(...Object.keys(everything), `return (${code})`)(...Object.values(everything))
}

describe.each(files.filter((name) => !INFRASTRUCTURE.has(name)))('%s', (name) => {
  const source = readFileSync(new URL(name, FOLDER), 'utf8')

  test.each(['Formula:', 'Source:', 'Edge cases:', '@example'])('its doc comment has %s', (heading) => {
    expect(source.includes(` * ${heading}`)).toBe(true)
  })

  const examples = [...source.matchAll(/@example (.+) \/\/ => (.+)/g)].map(([, call, result]) => [
    call!,
    result!
  ])
  // The comment prints eight digits or fewer, so numbers agree to a millionth.
  test.each(examples)('%s is %s', (call, result) => {
    expect(rounded(evaluate(call))).toEqual(rounded(evaluate(result)))
  })
})

test('no file is called infrastructure that is not there', () => {
  expect([...INFRASTRUCTURE].filter((name) => !files.includes(name))).toEqual([])
})

/** The same value with every number, at any depth, kept to six significant digits. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Number(value.toPrecision(6))
  if (Array.isArray(value)) return value.map(rounded)
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, rounded(part)]))
  }
  return value
}
