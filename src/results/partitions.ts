import type {PartitionResult} from '../model/results.ts'
import {partition} from '../statistics/partition.ts'
import {counted, measured, words} from './counted.ts'
import {orders} from './diversity-estimates.ts'
import type {HabitatInUse, SiteInUse} from './study-area.ts'

/** Individuals by species of one place. */
export interface PlaceCounts<Place> {
  readonly place: Place
  readonly species: ReadonlyMap<string, number>
}

/** Alpha, beta and gamma diversity between habitats, and between the sites of each habitat. */
export function partitionResults(
  habitats: readonly PlaceCounts<HabitatInUse>[],
  sites: readonly PlaceCounts<SiteInUse>[],
  scopeLabel: string
): PartitionResult[] {
  const between = partitionResult(
    'habitats',
    'between habitats',
    habitats.map(({place: {id, label}, species}) => ({id, label, species})),
    words.habitats,
    scopeLabel
  )
  return [
    between,
    ...habitats.map(({place: habitat}) => {
      return partitionResult(
        habitat.id,
        `between sites of ${habitat.label}`,
        sites
          .filter(({place}) => place.habitat === habitat)
          .map(({place: {id, name}, species}) => ({id, label: name, species})),
        words.sites,
        scopeLabel
      )
    })
  ]
}

function partitionResult(
  id: string,
  label: string,
  communities: readonly {
    readonly id: string
    readonly label: string
    readonly species: ReadonlyMap<string, number>
  }[],
  unit: readonly [string, string],
  scopeLabel: string
): PartitionResult {
  const caught = communities.filter(({species}) => species.size > 0)
  const names = [...new Set(caught.flatMap(({species}) => [...species.keys()]))].sort()
  const rows = caught.map(({species}) => names.map((name) => species.get(name) ?? 0))
  const where = `${scopeLabel}, ${label}`
  return {
    id,
    label,
    units: counted(`Units of the partition, ${where}`, caught.length, unit),
    leftOut: communities
      .filter(({species}) => species.size === 0)
      .map((each) => ({id: each.id, label: each.label, reason: 'nothing of the scope was caught there'})),
    orders: orders.map((order) => {
      const single = {notDefined: `there are fewer than two ${unit[1]} with catch`}
      const {alpha, beta, gamma} =
        rows.length < 2 ? {alpha: single, beta: single, gamma: single} : partition(rows, order)
      return {
        order,
        alpha: measured(`Alpha diversity (q = ${order}), ${where}`, 'diversity', alpha, words.effective),
        beta: measured(`Beta diversity (q = ${order}), ${where}`, 'diversity', beta, [
          `effective ${unit[0]}`,
          `effective ${unit[1]}`
        ]),
        gamma: measured(`Gamma diversity (q = ${order}), ${where}`, 'diversity', gamma, words.effective)
      }
    })
  }
}
