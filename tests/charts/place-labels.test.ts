import fc from 'fast-check'
import {expect, test} from 'vitest'
import {alongLine, placeLabels} from '../../src/charts/place-labels.ts'

const frame = {left: 0, right: 500, top: 0, bottom: 200}

test('a label that nothing disturbs stands close to the right of its point, without a leading line', () => {
  const [placed] = placeLabels([{at: {x: 100, y: 100}, width: 60, height: 13}], [], frame)
  expect(placed).toEqual({left: 108, middle: 100})
})

test('a label makes way for drawn lines', () => {
  const drawn = alongLine([
    {x: 0, y: 100},
    {x: 500, y: 100}
  ])
  const [placed] = placeLabels([{at: {x: 100, y: 100}, width: 60, height: 13}], drawn, frame)
  expect(Math.abs(placed!.middle - 100)).toBeGreaterThan(7)
})

test('labels of one place do not cover each other, and the far ones have leading lines', () => {
  const labels = Array.from({length: 6}, () => ({at: {x: 250, y: 100}, width: 80, height: 13}))
  const placed = placeLabels(labels, [], frame)
  for (const [index, one] of placed.entries()) {
    for (const other of placed.slice(index + 1)) {
      expect(Math.abs(one.left - other.left) >= 80 || Math.abs(one.middle - other.middle) >= 13).toBe(true)
    }
  }
})

test('labels stay inside the frame wherever their points are', () => {
  const point = fc.record({x: fc.integer({min: 0, max: 500}), y: fc.integer({min: 0, max: 200})})
  fc.assert(
    fc.property(point, (at) => {
      const [placed] = placeLabels([{at, width: 90, height: 26}], [], frame)
      expect(placed!.left).toBeGreaterThanOrEqual(0)
      expect(placed!.left + 90).toBeLessThanOrEqual(500)
      expect(placed!.middle - 13).toBeGreaterThanOrEqual(0)
      expect(placed!.middle + 13).toBeLessThanOrEqual(200)
    })
  )
})

test('points along a line are at most three pixels apart', () => {
  const points = alongLine([
    {x: 0, y: 0},
    {x: 30, y: 40},
    {x: 31, y: 40}
  ])
  for (const [index, point] of points.entries()) {
    const before = points[index - 1] ?? {x: 0, y: 0}
    expect(Math.hypot(point.x - before.x, point.y - before.y)).toBeLessThanOrEqual(3)
  }
})
