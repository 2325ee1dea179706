import fc from 'fast-check'
import {expect, test} from 'vitest'
import type {Visit} from '../../src/rules/fieldwork.ts'
import {nightsOpen} from '../../src/rules/nights-open.ts'

function visits(spans: readonly (readonly [number, number])[]): readonly Visit[] {
  return spans.map(([opened, nights]) => ({
    exposure: {opened: {day: opened}, collected: {day: opened + nights}}
  })) as unknown as readonly Visit[]
}

test('nights on which enough traps stood open are counted as if night by night', () => {
  const day = fc.integer({min: 0, max: 30})
  const spans = fc.array(fc.tuple(day, fc.integer({min: 1, max: 12})), {maxLength: 12})
  fc.assert(
    fc.property(spans, fc.integer({min: 1, max: 4}), day, day, (open, atLeast, one, other) => {
      const [from, to] = [Math.min(one, other), Math.max(one, other)]
      let expected = 0
      for (let night = from; night < to; night++) {
        const traps = open.filter(([opened, nights]) => opened <= night && night < opened + nights).length
        if (traps >= atLeast) expected += 1
      }
      expect(nightsOpen(visits(open), atLeast)(from, to)).toBe(expected)
    })
  )
})
