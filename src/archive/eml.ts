import type {Settings} from '../model/settings.ts'
import type {Study} from '../model/study.ts'
import type {Contributor, Dataset} from './dataset.ts'
import {element, textElement, type Xml, xmlDocument} from './xml.ts'

const namespace = 'https://eml.ecoinformatics.org/eml-2.2.0'

/**
 * Ecological Metadata Language 2.2.0, in the subset that the GBIF metadata profile 1.3 takes as well: no references
 * (parties are written out again), a thesaurus for every set of keywords, no entities. The order of the elements is
 * that of the schema.
 */
export function eml(study: Study, dataset: Dataset): string {
  const {id, title, language, authors, others, description, issued, fingerprint} = dataset
  const [lead] = authors
  const spoken = language.slice(0, 2)
  return xmlDocument(
    element(
      'eml:eml',
      {
        'xmlns:eml': namespace,
        'xmlns:xsi': 'http://www.w3.org/2001/XMLSchema-instance',
        'xsi:schemaLocation': `${namespace} ${namespace}/eml.xsd`,
        packageId: `${id}/${fingerprint.slice(0, 16)}`,
        system: 'pitfolio',
        scope: 'system',
        'xml:lang': spoken
      },
      element(
        'dataset',
        {},
        element('alternateIdentifier', {}, id),
        element('title', {'xml:lang': spoken}, title),
        authors.length === 0 ? unknownParty('creator') : authors.map((author) => party('creator', author)),
        party('metadataProvider', lead),
        others.map((other) =>
          party('associatedParty', other, textElement('role', other.role ?? 'contributor'))
        ),
        textElement('pubDate', issued),
        element('language', {}, spoken),
        element('abstract', {}, paragraph(description)),
        keywords(dataset),
        rights(dataset),
        licensed(dataset),
        coverage(study, dataset),
        maintenance(),
        lead === undefined ? unknownParty('contact') : party('contact', lead),
        methods(study.settings, dataset),
        project(study.settings, dataset)
      )
    )
  )
}

function party(name: string, person: Contributor | undefined, role?: Xml): Xml | undefined {
  if (person === undefined) return undefined
  const {given, family} = person.parts
  return element(
    name,
    {},
    element('individualName', {}, textElement('givenName', given), element('surName', {}, family)),
    textElement('electronicMailAddress', person.email),
    textElement('userId', person.orcid, {directory: 'https://orcid.org'}),
    role
  )
}

/** EML asks for somebody; where study.yaml names nobody, that is what is said. */
function unknownParty(name: string): Xml {
  return element(name, {}, element('positionName', {}, 'not recorded'))
}

function paragraph(text: string): Xml {
  return element('para', {}, text)
}

function keywords({keywords: words}: Dataset): readonly Xml[] {
  const set = (list: readonly string[], thesaurus: string): Xml =>
    element(
      'keywordSet',
      {},
      list.map((word) => element('keyword', {}, word)),
      element('keywordThesaurus', {}, thesaurus)
    )
  return [
    set(
      ['Samplingevent'],
      'GBIF Dataset Type Vocabulary: http://rs.gbif.org/vocabulary/gbif/dataset_type_2015-07-10.xml'
    ),
    set(words, 'n/a')
  ]
}

/** The older place for a licence, which many readers still look at. */
function rights({licence, licenceWords}: Dataset): Xml | undefined {
  if (licence === undefined)
    return licenceWords === undefined ? undefined : element('intellectualRights', {}, paragraph(licenceWords))
  const link = element(
    'ulink',
    {url: licence.url},
    element('citetitle', {}, `${licence.name} (${licence.id})`)
  )
  return element('intellectualRights', {}, element('para', {}, 'This work is licensed under ', link, '.'))
}

function licensed({licence}: Dataset): Xml | undefined {
  if (licence === undefined) return undefined
  const {id, name, url} = licence
  return element(
    'licensed',
    {},
    element('licenseName', {}, name),
    element('url', {}, url),
    element('identifier', {}, id)
  )
}

function coverage({taxa}: Study, dataset: Dataset): Xml | undefined {
  const parts = [geographic(dataset), temporal(dataset), taxonomic(taxa, dataset)]
  return parts.some((part) => part !== undefined) ? element('coverage', {}, parts) : undefined
}

function geographic({place, box}: Dataset): Xml | undefined {
  if (box === undefined) return undefined
  const said = `${place ?? 'Study area'}. The box holds the positions of the sites as they are published; positions may be rounded or left out.`
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

function maintenance(): Xml {
  return element(
    'maintenance',
    {},
    element('description', {}, paragraph('The season is over; no further changes are planned.')),
    element('maintenanceUpdateFrequency', {}, 'notPlanned')
  )
}

function methods(settings: Settings, {begins, ends, place}: Dataset): Xml {
  const {
    site_selection: selection,
    layout,
    identification,
    sorting,
    vouchers,
    permits,
    limitations
  } = settings
  const steps = [trapWords(settings), identificationWords(identification, sorting), vouchers, permits].filter(
    (step) => step !== undefined
  )
  const extent = [place, begins !== undefined && ends !== undefined ? `${begins} to ${ends}` : undefined]
  const design = [selection, layout?.geometry, spacingWords(layout), intervalWords(settings)]
  const said = (parts: readonly (string | undefined)[]): Xml => {
    const words = parts.filter((part) => part !== undefined)
    return paragraph(words.length === 0 ? 'not recorded' : sentences(words))
  }
  return element(
    'methods',
    {},
    (steps.length === 0 ? ['Pitfall traps; nothing more is recorded.'] : steps).map((step) =>
      element('methodStep', {}, element('description', {}, paragraph(sentences([step]))))
    ),
    element(
      'sampling',
      {},
      element('studyExtent', {}, element('description', {}, said(extent))),
      element('samplingDescription', {}, said(design))
    ),
    element(
      'qualityControl',
      {},
      element(
        'description',
        {},
        paragraph(
          sentences([
            'Dates, states of traps, counts and names were checked by rule; what was found is in findings.json of the archive, and rows that could not be used are set aside from every number',
            limitations
          ])
        )
      )
    )
  )
}

function trapWords({trap_types: types = {}, fluids = {}}: Settings): string | undefined {
  const traps = Object.values(types).map(
    ({container, rim_diameter_mm: rim, depth_mm: depth, material, cover}) =>
      [
        container ?? 'pitfall trap',
        rim === undefined ? undefined : `rim ${rim} mm wide`,
        depth === undefined ? undefined : `${depth} mm deep`,
        material,
        typeof cover === 'string' ? `cover: ${cover}` : undefined
      ]
        .filter((part) => part !== undefined)
        .join(', ')
  )
  const fills = Object.values(fluids).map(({substance, dilution, volume_ml: volume}) =>
    [substance ?? 'fluid', dilution, volume === undefined ? undefined : `${volume} ml`]
      .filter((part) => part !== undefined)
      .join(' ')
  )
  const parts = [
    traps.length === 0 ? undefined : `Traps: ${traps.join('; ')}`,
    fills.length === 0 ? undefined : `Fluid: ${fills.join('; ')}`
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? undefined : parts.join('. ')
}

function identificationWords(
  identification: Settings['identification'],
  sorting: Settings['sorting']
): string | undefined {
  const {level, keys, nomenclature, verifier} = identification ?? {}
  const parts = [
    sorting?.groups_done === undefined ? undefined : `Groups sorted: ${sorting.groups_done.join(', ')}`,
    level === undefined ? undefined : `Identified: ${level}`,
    keys === undefined ? undefined : `Keys: ${keys.join('; ')}`,
    nomenclature === undefined ? undefined : `Nomenclature: ${nomenclature}`,
    verifier === undefined ? undefined : `Checked by ${verifier}`
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? undefined : sentences(parts)
}

function spacingWords(layout: Settings['layout']): string | undefined {
  const {traps_per_site: traps, spacing_m: spacing} = layout ?? {}
  const parts = [
    traps === undefined ? undefined : `${traps} traps a site`,
    spacing === undefined ? undefined : `${spacing} m from trap to trap`
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? undefined : parts.join(', ')
}

function intervalWords({protocol}: Settings): string | undefined {
  const {rounds, interval_nights: nights} = protocol ?? {}
  const parts = [
    rounds === undefined ? undefined : `${rounds} rounds planned`,
    nights === undefined ? undefined : `${nights} nights each`
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? undefined : parts.join(', ')
}

function project({funding}: Settings, {title, authors}: Dataset): Xml | undefined {
  const [lead] = authors
  if (funding === undefined || lead === undefined) return undefined
  return element(
    'project',
    {},
    element('title', {}, title),
    party('personnel', lead, element('role', {}, 'author')),
    element('funding', {}, paragraph(funding))
  )
}

/** Parts as sentences behind each other, each with one full stop. */
function sentences(parts: readonly (string | undefined)[]): string {
  return parts
    .filter((part) => part !== undefined)
    .map((part) => part.replace(/\s+/g, ' ').trim())
    .map((part) => (/[.!?]$/.test(part) ? part : `${part}.`))
    .join(' ')
}
