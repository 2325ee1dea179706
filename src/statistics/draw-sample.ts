import {binomialDraw} from './binomial-draw.ts'
import type {Assemblage} from './estimated-assemblage.ts'
import {type FrequencyCounts, frequencyCounts, incidenceCounts} from './frequency-counts.ts'
import type {RandomStream} from './random-stream.ts'

/** A sample of the same size drawn from the assemblage: individuals multinomially, units independently. */
export function drawSample(assemblage: Assemblage, stream: RandomStream): FrequencyCounts {
  return assemblage.kind === 'abundance'
    ? frequencyCounts(drawIndividuals(assemblage, stream))
    : incidenceCounts(drawIncidences(assemblage, stream), assemblage.size)
}

/** Species by species, each binomial in what the species before have left: exactly multinomial. */
function drawIndividuals(assemblage: Assemblage, stream: RandomStream): number[] {
  const {seen, size, unseenSpecies} = assemblage
  const counts: number[] = []
  const chances = conditionalChances(assemblage)
  let left = size
  for (let i = 0; i < seen.length && left > 0; i++) {
    const count = binomialDraw(stream, left, chances[i]!)
    left -= count
    counts.push(count)
  }
  if (left === 0) return counts
  // Of unseen species only those drawn matter, however many there are.
  const drawn = new Map<number, number>()
  for (; left > 0; left--) {
    const species = stream.integer(unseenSpecies)
    drawn.set(species, (drawn.get(species) ?? 0) + 1)
  }
  return [...counts, ...drawn.values()]
}

const chancesOf = new WeakMap<Assemblage, readonly number[]>()

/** The chance of each species among itself and those after it: the same for every draw from the assemblage. */
function conditionalChances(assemblage: Assemblage): readonly number[] {
  const known = chancesOf.get(assemblage)
  if (known !== undefined) return known
  const {seen, unseenEach, unseenSpecies} = assemblage
  const chances = new Array<number>(seen.length)
  // Sums from the end, so that the last conditional probability is 1 and not nearly 1.
  for (let i = seen.length - 1, rest = unseenEach * unseenSpecies; i >= 0; i--) {
    rest += seen[i]!
    chances[i] = seen[i]! / rest
  }
  chancesOf.set(assemblage, chances)
  return chances
}

function drawIncidences({seen, size, unseenEach, unseenSpecies}: Assemblage, stream: RandomStream): number[] {
  const counts = seen.map((share) => binomialDraw(stream, size, share))
  if (unseenEach > 0) {
    // Species by unit is one long row of cells of equal chance; the gaps between hits are geometric.
    const cells = unseenSpecies * size
    const rate = Math.log1p(-unseenEach)
    const drawn = new Map<number, number>()
    let cell = Math.floor(Math.log1p(-stream.uniform()) / rate)
    while (cell < cells) {
      const species = Math.floor(cell / size)
      drawn.set(species, (drawn.get(species) ?? 0) + 1)
      cell += 1 + Math.floor(Math.log1p(-stream.uniform()) / rate)
    }
    counts.push(...drawn.values())
  }
  return counts
}
