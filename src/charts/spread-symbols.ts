import type {Pixel} from './place-labels.ts'

/** Pixels between the middles of two symbols, so that neither covers the other and each has its line for a name. */
const apart = 14
const mostInColumn = 6

/**
 * Places for symbols that are to stand at the given ones: those of one place stand in a column about it, and one
 * that would cover another gives way to the nearest free place. The same input always gives the same places.
 */
export function spreadSymbols(places: readonly Pixel[]): readonly Pixel[] {
  const together = new Map<string, number>()
  const keys = places.map(({x, y}) => `${x} ${y}`)
  for (const key of keys) together.set(key, (together.get(key) ?? 0) + 1)
  const met = new Map<string, number>()
  const taken: Pixel[] = []
  return places.map((place, index) => {
    const key = keys[index]!
    const nth = met.get(key) ?? 0
    met.set(key, nth + 1)
    const wanted = inColumns(place, nth, together.get(key) ?? 1)
    const free = [wanted, ...around(wanted)].find(({x, y}) =>
      taken.every((other) => Math.hypot(other.x - x, other.y - y) >= apart - 0.5)
    )
    const chosen = free ?? wanted
    taken.push(chosen)
    return chosen
  })
}

/** The place of one of several symbols in columns about a middle. */
function inColumns({x, y}: Pixel, nth: number, howMany: number): Pixel {
  const columns = Math.ceil(howMany / mostInColumn)
  const rows = Math.ceil(howMany / columns)
  const [column, row] = [Math.floor(nth / rows), nth % rows]
  const inColumn = Math.min(rows, howMany - column * rows)
  return {x: x + (column - (columns - 1) / 2) * apart, y: y + (row - (inColumn - 1) / 2) * apart}
}

/** Places on widening rings. */
function around({x, y}: Pixel): readonly Pixel[] {
  return Array.from({length: 6}, (_, ring) => ring + 1).flatMap((ring) =>
    Array.from({length: 6 * ring}, (_, step) => {
      const angle = (step * Math.PI) / (3 * ring)
      return {x: x + Math.cos(angle) * apart * ring, y: y + Math.sin(angle) * apart * ring}
    })
  )
}
