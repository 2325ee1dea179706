import type {Settings} from '../model/settings.ts'
import type {Study} from '../model/study.ts'
import type {Contributor, Dataset} from './dataset.ts'
import {coverage} from './eml/coverage.ts'
import {methods} from './eml/methods.ts'
import {element, paragraph, textElement, type Xml, xmlDocument} from './xml.ts'

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

function maintenance(): Xml {
  return element(
    'maintenance',
    {},
    element('description', {}, paragraph('The season is over; no further changes are planned.')),
    element('maintenanceUpdateFrequency', {}, 'notPlanned')
  )
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
