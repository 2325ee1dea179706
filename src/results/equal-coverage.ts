import {isDefined} from '../model/quantity.ts'
import type {EqualCoverageResult} from '../model/results.ts'
import type {CommonCoverage} from '../statistics/common-coverage.ts'
import type {DiversityAtCoverage} from '../statistics/diversity-at-coverage.ts'
import type {DescribedAssemblage} from './assemblage.ts'
import {measured, words} from './counted.ts'
import type {HabitatInUse, SiteInUse} from './study-area.ts'

/** An assemblage with the habitat or site that it belongs to. */
type Described<Place> = readonly (readonly [place: Place, described: DescribedAssemblage])[]

/** Diversity of the habitats at their common coverage, and of single sites beside them. */
export function equalCoverageResult(
  common: CommonCoverage,
  habitats: Described<HabitatInUse>,
  sites: Described<SiteInUse>,
  scopeLabel: string
): EqualCoverageResult {
  const labels = new Map(habitats.map(([{id, label}]) => [id, label]))
  const compared = new Set(common.compared)
  const whole = common.compared.length > 1
  return {
    coverage: measured(`Common coverage, ${scopeLabel}`, 'coverage', common.coverage),
    habitats: whole
      ? habitats
          .filter(([{id}]) => compared.has(id))
          .map(([{id, label, style}, described]) => ({
            id,
            label,
            style,
            ...atCommon(described, `${scopeLabel}, ${label}`)
          }))
      : [],
    leftOut: common.leftOut.map(({name, reason}) => ({id: name, label: labels.get(name) ?? name, reason})),
    sites: whole
      ? sites
          .filter(([{habitat}]) => compared.has(habitat.id))
          .map(([{id, name, habitat}, described]) => ({
            id,
            label: name,
            style: habitat.style,
            habitat: habitat.id,
            ...atCommon(described, `${scopeLabel}, ${name}`)
          }))
      : []
  }
}

type AtCommon = Pick<EqualCoverageResult['habitats'][number], 'size' | 'beyond' | 'q0' | 'q1' | 'q2'>

const none: DiversityAtCoverage = (() => {
  const nothing = {notDefined: 'its own coverage is not defined'}
  return {size: nothing, q0: nothing, q1: nothing, q2: nothing}
})()

function atCommon({sample, atCommonCoverage}: DescribedAssemblage, where: string): AtCommon {
  const {size, q0, q1, q2} = atCommonCoverage ?? none
  const diversity = (order: number, quantity: DiversityAtCoverage['q0']) =>
    measured(
      `Diversity at the common coverage (q = ${order}), ${where}`,
      'diversity',
      quantity,
      words.effective
    )
  return {
    size: measured(`Individuals that the common coverage takes, ${where}`, 'count', size, words.individuals),
    beyond: isDefined(size) && size.value > sample.size,
    q0: diversity(0, q0),
    q1: diversity(1, q1),
    q2: diversity(2, q2)
  }
}
