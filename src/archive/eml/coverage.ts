import type {Study} from '../../model/study.ts'
import type {Dataset} from '../dataset.ts'
import {element, textElement, type Xml} from '../xml.ts'

/** Where, when, and what was sought: places and days as they are published. */
export function coverage({taxa}: Study, dataset: Dataset): Xml | undefined {
  const parts = [geographic(dataset), temporal(dataset), taxonomic(taxa, dataset)]
  return parts.some((part) => part !== undefined) ? element('coverage', {}, parts) : undefined
}

function geographic({place, box}: Dataset): Xml | undefined {
  if (box === undefined) return undefined
  const said = `${(place ?? 'Study area').replace(/[.\s]+$/, '')}. The box holds the positions of the sites as they are published; positions may be rounded or left out.`
  return element(
    'geographicCoverage',
    {},
    element('geographicDescription', {}, said),
    element(
      'boundingCoordinates',
      {},
      element('westBoundingCoordinate', {}, `${box.west}`),
      element('eastBoundingCoordinate', {}, `${box.east}`),
      element('northBoundingCoordinate', {}, `${box.north}`),
      element('southBoundingCoordinate', {}, `${box.south}`)
    )
  )
}

function temporal({begins, ends}: Dataset): Xml | undefined {
  if (begins === undefined || ends === undefined) return undefined
  const day = (name: string, date: string): Xml => element(name, {}, element('calendarDate', {}, date))
  return element(
    'temporalCoverage',
    {},
    element('rangeOfDates', {}, day('beginDate', begins), day('endDate', ends))
  )
}

function taxonomic(taxa: Study['taxa'], {targetGroups}: Dataset): Xml | undefined {
  const ranks = ['class', 'order', 'family', 'genus'] as const
  const groups = targetGroups.map((group) => ({
    group,
    rank: ranks.find((rank) => taxa.some((taxon) => taxon[rank]?.toLowerCase() === group.toLowerCase()))
  }))
  if (groups.length === 0) return undefined
  return element(
    'taxonomicCoverage',
    {},
    element('generalTaxonomicCoverage', {}, `Groups sought: ${targetGroups.join(', ')}`),
    groups.map(({group, rank}) =>
      element(
        'taxonomicClassification',
        {},
        textElement('taxonRankName', rank),
        element('taxonRankValue', {}, group)
      )
    )
  )
}
