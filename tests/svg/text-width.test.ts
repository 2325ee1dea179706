import fc from 'fast-check'
import {expect, test} from 'vitest'
import {textWidth} from '../../src/svg/text-metrics/text-width.ts'

/** Widths in units of 1/2048 em, without the allowance. */
function units(text: string, fontWeight = 'normal'): number {
  return textWidth({fontSize: 2048, fontWeight}, text) / 1.12
}

test('letters have the advance widths of Arial and Liberation Sans', () => {
  // Widths printed in the fonts' own tables: i 455, m 1706, figures 1139, of 2048.
  expect(units('i')).toBeCloseTo(455, 6)
  expect(units('m')).toBeCloseTo(1706, 6)
  for (const figure of '0123456789') expect(units(figure)).toBeCloseTo(1139, 6)
})

test('bold text is wider than regular text', () => {
  expect(units('Pterostichus', 'bold')).toBeGreaterThan(units('Pterostichus'))
  expect(units('Pterostichus', '700')).toBe(units('Pterostichus', 'bold'))
})

test('width grows in proportion to the font size', () => {
  expect(textWidth({fontSize: 24}, 'Carabus')).toBeCloseTo(2 * textWidth({fontSize: 12}, 'Carabus'), 10)
})

test('space around a line counts nothing, because it is not drawn', () => {
  expect(textWidth({fontSize: 11}, '  trap-nights ')).toBe(textWidth({fontSize: 11}, 'trap-nights'))
})

test('nothing has no width, and a number has the width of its figures', () => {
  for (const nothing of [undefined, null, '']) expect(textWidth({fontSize: 11}, nothing)).toBe(0)
  expect(textWidth({fontSize: 11}, 125)).toBe(textWidth({fontSize: 11}, '125'))
})

test('letters with accents outside the table are as wide as their base letter', () => {
  expect(units('ế')).toBe(units('e'))
  expect(units('e\u0301')).toBe(units('e'))
})

test('letters of other scripts count as a full em', () => {
  expect(units('虫')).toBeCloseTo(2048, 6)
  expect(units('🪲')).toBeCloseTo(2048, 6)
})

test('names of object members are measured like any other text', () => {
  expect(units('constructor')).toBeCloseTo(
    [...'constructor'].reduce((sum, letter) => sum + units(letter), 0),
    6
  )
})

test('a limit caps the width, and a limit of 0 does not', () => {
  expect(textWidth({fontSize: 11, limit: 20}, 'Abax parallelepipedus')).toBe(20)
  expect(textWidth({fontSize: 11, limit: 0}, 'Abax parallelepipedus')).toBeGreaterThan(100)
})

test('any text has a finite width that no additional letter makes smaller', () => {
  fc.assert(
    fc.property(fc.string({unit: 'binary'}), (text) => {
      const width = textWidth({fontSize: 11}, text)
      expect(Number.isFinite(width)).toBe(true)
      expect(textWidth({fontSize: 11}, `${text}x`)).toBeGreaterThan(width)
    })
  )
})
