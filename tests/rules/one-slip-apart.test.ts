import fc from 'fast-check'
import {distance} from 'fastest-levenshtein'
import {expect, test} from 'vitest'
import {isOneSlip, oneSlipApart} from '../../src/rules/one-slip-apart.ts'

const word = fc.string({unit: fc.constantFrom('a', 'b', 'c'), maxLength: 6})

function changedPlaces(one: string, other: string): boolean {
  return Array.from(one).some((_, at) => {
    const swapped = `${one.slice(0, at)}${one[at + 1] ?? ''}${one[at]}${one.slice(at + 2)}`
    return at + 1 < one.length && swapped === other && one !== other
  })
}

test('one slip is one letter more, less or other, or two neighbours that changed places', () => {
  fc.assert(
    fc.property(word, word, (one, other) => {
      expect(isOneSlip(one, other)).toBe(distance(one, other) === 1 || changedPlaces(one, other))
    })
  )
})

test('all pairs that are one slip apart are found among many, each once', () => {
  fc.assert(
    fc.property(fc.uniqueArray(word, {maxLength: 30}), (words) => {
      const all = words.flatMap((one, at) =>
        words.slice(at + 1).flatMap((other) => (isOneSlip(one, other) ? [`${one} ${other}`] : []))
      )
      expect(
        oneSlipApart(words)
          .map((pair) => pair.join(' '))
          .sort()
      ).toEqual(all.sort())
    })
  )
})
