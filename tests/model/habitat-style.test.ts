import {expect, test} from 'vitest'
import {habitatStyle, habitatStyleCount, habitatStyles} from '../../src/model/habitat-style.ts'
import {inkTones} from '../../src/model/ink.ts'
import {colourVisions, contrast, distance, oklab} from './colour-vision.ts'

const colours = habitatStyles(habitatStyleCount).map((style) => style.colour)
const pairs = colours.flatMap((one, index) => colours.slice(index + 1).map((other) => [one, other] as const))

test('black on white has the greatest contrast there is', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
})

test('the colour spaces of these tests leave white white', () => {
  const white = oklab([1, 1, 1])
  expect(white[0]).toBeCloseTo(1, 6)
  expect(white[1]).toBeCloseTo(0, 6)
  expect(white[2]).toBeCloseTo(0, 6)
  for (const row of Object.values(colourVisions).flat()) expect(row[0] + row[1] + row[2]).toBeCloseTo(1, 5)
})

test.each(colours)('habitat colour %s stands out at least 3:1 from white and from dark paper', (colour) => {
  expect(contrast(colour, inkTones.paper.light)).toBeGreaterThanOrEqual(3)
  expect(contrast(colour, inkTones.paper.dark)).toBeGreaterThanOrEqual(3)
})

test.each(['light', 'dark'] as const)('text tones stand out at least 4.5:1 on %s paper', (page) => {
  expect(contrast(inkTones.ink[page], inkTones.paper[page])).toBeGreaterThanOrEqual(4.5)
  expect(contrast(inkTones.muted[page], inkTones.paper[page])).toBeGreaterThanOrEqual(4.5)
})

// 2 is about the smallest difference that is noticed side by side (common practice, no source).
test.each(Object.entries(colourVisions))(
  'any two habitat colours differ clearly in %s vision',
  (_, vision) => {
    for (const [one, other] of pairs)
      expect(distance(one, other, vision), `${one} ${other}`).toBeGreaterThan(6)
  }
)

test.each(Object.entries(colourVisions))(
  'the first four habitat colours differ most in %s vision',
  (_, vision) => {
    const firstFour = colours.slice(0, 4)
    for (const one of firstFour) {
      for (const other of firstFour)
        if (one !== other) expect(distance(one, other, vision)).toBeGreaterThan(9.5)
    }
  }
)

test('eight habitats share no colour, no symbol and no dash', () => {
  for (const trait of ['colour', 'shape', 'dash'] as const) {
    const values = new Set(habitatStyles(8).map((style) => JSON.stringify(style[trait])))
    expect(values.size, trait).toBe(8)
  }
})

test('sixty-four habitats all look different even where colours come round again', () => {
  expect(new Set(habitatStyles(64).map((style) => JSON.stringify(style))).size).toBe(64)
  expect(habitatStyle(8).colour).toBe(habitatStyle(0).colour)
  expect(habitatStyle(8).shape).not.toBe(habitatStyle(0).shape)
})
