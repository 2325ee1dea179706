import {isDefined, type Quantity} from '../model/quantity.ts'
import type {DissimilaritiesResult} from '../model/results.ts'
import {brayCurtis} from '../statistics/bray-curtis.ts'
import {jaccard} from '../statistics/jaccard.ts'
import {turnoverNestedness} from '../statistics/turnover-nestedness.ts'
import {counted, measured, words} from './counted.ts'
import {short} from './curves.ts'
import type {HabitatInUse} from './study-area.ts'

/** A site or habitat as a row of values by species, the same species in every row. */
export interface PlaceRow {
  readonly id: string
  readonly label: string
  readonly habitat: string
  readonly style: number
  /** Individuals per 100 trap-nights by species; 0 where a species was not caught. */
  readonly rates: readonly number[]
}

/** More pairs than these nobody reads, and they would fill the file. */
const mostItems = 60

/** Dissimilarities of every pair of places, with the multiple-site values of all of them, and of each habitat's sites. */
export function dissimilaritiesResult(
  places: readonly PlaceRow[],
  what: 'sites' | 'habitats',
  scopeLabel: string,
  habitats: readonly HabitatInUse[] = []
): DissimilaritiesResult {
  const caught = places.filter(({rates}) => rates.some((rate) => rate > 0))
  const where = `${scopeLabel}, between ${what}`
  const listed = caught.length <= mostItems
  const parts = listed ? pairs(caught, (a, b) => turnoverNestedness([a, b])) : []
  const bray = pairs(caught, brayCurtis)
  const {sorensen, turnover, nestedness} = turnoverNestedness(caught.map(({rates}) => rates))
  const mean = (label: string, same: boolean) =>
    measured(`${label}, ${where}`, 'ratio', meanOf(bray, caught, same))
  const multiple = (label: string, quantity: Quantity) => measured(`${label}, ${where}`, 'ratio', quantity)
  return {
    items: caught.map(({id, label, habitat, style}) => ({id, label, habitat, style})),
    leftOut: places
      .filter((place) => !caught.includes(place))
      .map(({id, label}) => ({id, label, reason: 'nothing of the scope was caught there'})),
    ...(!listed && {notListed: `there are more than ${mostItems} ${what}`}),
    sorensen: triangle(parts, (pair) => pair.sorensen),
    jaccard: listed ? triangle(pairs(caught, jaccard), (pair) => pair) : [],
    brayCurtis: listed ? triangle(bray, (pair) => pair) : [],
    turnover: triangle(parts, (pair) => pair.turnover),
    nestedness: triangle(parts, (pair) => pair.nestedness),
    meanWithin: mean('Mean Bray-Curtis dissimilarity within habitats', true),
    meanBetween: mean('Mean Bray-Curtis dissimilarity of different habitats', false),
    multiple: {
      sorensen: multiple('Multiple-site dissimilarity (Sorensen)', sorensen),
      turnover: multiple('Turnover in the multiple-site dissimilarity', turnover),
      nestedness: multiple('Nestedness in the multiple-site dissimilarity', nestedness)
    },
    multipleWithin: habitats.map(({id, label, style}) => {
      const own = caught.filter(({habitat}) => habitat === id)
      const found = turnoverNestedness(own.map(({rates}) => rates))
      const within = (name: string, quantity: Quantity) =>
        measured(`${name}, ${scopeLabel}, between sites of ${label}`, 'ratio', quantity)
      return {
        id,
        label,
        style,
        units: counted(`Sites with catch, ${scopeLabel}, ${label}`, own.length, words.sites),
        sorensen: within('Multiple-site dissimilarity (Sorensen)', found.sorensen),
        turnover: within('Turnover in the multiple-site dissimilarity', found.turnover),
        nestedness: within('Nestedness in the multiple-site dissimilarity', found.nestedness)
      }
    })
  }
}

/** Lower triangle: row i holds the pairs of place i with those before it. */
function pairs<Pair>(
  places: readonly PlaceRow[],
  measure: (first: readonly number[], second: readonly number[]) => Pair
): Pair[][] {
  return places.map(({rates}, row) => places.slice(0, row).map((earlier) => measure(earlier.rates, rates)))
}

/** Places without catch are left out, so that every pair has a value. */
function triangle<Pair>(
  rows: readonly (readonly Pair[])[],
  quantityOf: (pair: Pair) => Quantity
): number[][] {
  return rows.map((row) =>
    row.map((pair) => {
      const quantity = quantityOf(pair)
      return isDefined(quantity) ? short(quantity.value) : 0
    })
  )
}

function meanOf(
  rows: readonly (readonly Quantity[])[],
  places: readonly PlaceRow[],
  same: boolean
): Quantity {
  let sum = 0
  let count = 0
  for (const [row, quantities] of rows.entries()) {
    for (const [column, quantity] of quantities.entries()) {
      if ((places[row]!.habitat === places[column]!.habitat) !== same || !isDefined(quantity)) continue
      sum += quantity.value
      count += 1
    }
  }
  if (count > 0) return {value: sum / count}
  return {
    notDefined: same ? 'no habitat has two of them with catch' : 'fewer than two habitats have any catch'
  }
}
