import {readFileSync} from 'node:fs'
import {expect, test} from 'vitest'

/** What `npm run simulate` found last, and what reports say of it. */
const results = readFileSync(new URL('results.md', import.meta.url), 'utf8')
const chapter = readFileSync(new URL('../../templates/chapter.md', import.meta.url), 'utf8')

/** Cells of the table below a heading, by the heads of its columns. */
function tableOf(title: string): readonly ReadonlyMap<string, string>[] {
  const section = results.split('\n## ').find((text) => text.startsWith(title)) ?? ''
  const [head = [], , ...rows] = section
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim())
    )
  return rows.map((cells) => new Map(cells.map((cell, index) => [head[index] ?? '', cell])))
}

const percent = (cell: string | undefined) => Number.parseFloat(cell ?? '')

test('the interval of a rate holds 93 to 97 % at three to six sites, within the error of the simulation', () => {
  const rows = tableOf('Rate of a habitat')
  expect(new Set(rows.map((row) => row.get('sites')))).toEqual(new Set(['3', '4', '5', '6']))
  for (const row of rows) {
    expect(row.get('93 to 97 %')).not.toContain('no')
    expect(percent(row.get('ratio'))).toBeGreaterThan(92.5)
    expect(percent(row.get('ratio'))).toBeLessThan(97)
  }
})

test('the test of habitats rejects 4 to 6 % without effect wherever its smallest p allows it', () => {
  const rows = tableOf('Test of a difference in activity-density')
  const able = rows.filter((row) => percent(row.get('attainable %')) >= 4)
  expect(able.length).toBeGreaterThan(5)
  for (const row of able) {
    expect(percent(row.get('rejected %'))).toBeGreaterThanOrEqual(4)
    expect(percent(row.get('rejected %'))).toBeLessThanOrEqual(6)
  }
  for (const row of rows) expect(row.get('4 to 6 %')).not.toContain('no')
})

test('what the chapter says of the intervals of ratios is what was simulated', () => {
  const rows = tableOf('Ratio of the rates of two habitats')
  const clumped = rows.filter((row) => row.get('catch') === 'clumped')
  expect(new Set(clumped.map((row) => row.get('blocks')))).toEqual(new Set(['yes', 'no']))
  expect(new Set(clumped.map((row) => row.get('sites each')))).toEqual(new Set(['3', '4', '5', '6']))
  for (const row of clumped) expect(row.get('93 to 97 %')).toBe('yes')
  const held = clumped.map((row) => Math.round(percent(row.get('printed'))))
  const range = `${Math.min(...held)} to ${Math.max(...held)}`
  expect(chapter).toContain(`made to hold in 95 of 100 held in ${range}, with blocks and without`)
  // Few animals, or sites that hardly differ: not below what was promised, and in some of them well above.
  const nearPoisson = rows.filter((row) => row.get('catch') !== 'clumped')
  for (const row of nearPoisson) expect(percent(row.get('printed'))).toBeGreaterThan(94)
  expect(Math.max(...nearPoisson.map((row) => percent(row.get('printed'))))).toBeGreaterThan(97)
  expect(chapter).toContain('with few animals, or sites that hardly differ, they can be wider than need be')
})

test('the interval of a share holds 93 to 97 %, or more where there are few animals to differ by', () => {
  const rows = tableOf('Share of one kind')
  expect(rows.length).toBeGreaterThan(10)
  for (const row of rows) expect(percent(row.get('ratio'))).toBeGreaterThan(93)
  for (const row of rows.filter((each) => percent(each.get('catch a site')) > 50))
    expect(percent(row.get('ratio'))).toBeLessThan(98)
})

test('what reports say of tests of dispersion at few sites is what was simulated', () => {
  // Equal spread, a p that can go below 0.05, and fewer than six sites in some habitat.
  const few = tableOf('Tests of composition and of dispersion').filter((row) => {
    const layout = row.get('habitats x sites') ?? ''
    const sites = layout.match(/\d+/g)?.map(Number) ?? []
    const smallest = layout.includes('+') ? Math.min(...sites) : sites[1]!
    return row.get('attainable %') !== '0.0' && smallest < 6 && !/,/.test(layout)
  })
  expect(few.length).toBeGreaterThan(3)
  const rejected = few.map((row) => Math.round(percent(row.get('dispersion rejected %'))))
  const said = `rejected in ${Math.min(...rejected)} to ${Math.max(...rejected)} of 100`
  expect(readFileSync(new URL('../../src/results/composition.ts', import.meta.url), 'utf8')).toContain(said)
})
