import type {Contributor, Dataset} from './dataset.ts'

/** Licences for data that the closed list of CFF 1.2.0 holds; for all others it takes an address. */
const licensed = /^(CC0-1\.0|CC-BY(-NC)?(-ND|-SA)?-[1-4]\.0|ODbL-1\.0|ODC-By-1\.0|PDDL-1\.0|MIT|Apache-2\.0)$/

/** Citation File Format 1.2.0: how the data set is cited. YAML whose texts are all quoted, so that no reader takes a date or `NO` for something else. */
export function citationCff(dataset: Dataset): string {
  const {title, authors, licence, issued, keywords, description, contact} = dataset
  const lines = [
    'cff-version: "1.2.0"',
    `message: ${quoted(`If you use these data, please cite them as below.${contact === undefined ? '' : ` Questions: ${contact}`}`)}`,
    'type: dataset',
    `title: ${quoted(title)}`,
    `abstract: ${quoted(description)}`,
    'authors:',
    ...(authors.length === 0 ? [`  - name: ${quoted('not recorded')}`] : authors.flatMap(author)),
    ...(licence === undefined
      ? []
      : [licensed.test(licence.id) ? `license: ${licence.id}` : `license-url: ${quoted(licence.url)}`]),
    ...(issued === undefined ? [] : [`date-released: ${quoted(issued)}`]),
    'keywords:',
    ...[...new Set(keywords)].map((keyword) => `  - ${quoted(keyword)}`)
  ]
  return `${lines.join('\n')}\n`
}

function author({parts: {given, family}, orcid, email}: Contributor): readonly string[] {
  const fields = [
    given === undefined ? undefined : `given-names: ${quoted(given)}`,
    `family-names: ${quoted(family)}`,
    orcid === undefined ? undefined : `orcid: ${quoted(orcid)}`,
    email === undefined || !/^[\S]+@[\S]+\.[\S]{2,}$/.test(email) ? undefined : `email: ${quoted(email)}`
  ].filter((field) => field !== undefined)
  return fields.map((field, index) => `${index === 0 ? '  - ' : '    '}${field}`)
}

/** A text between double quotes: what JSON writes, YAML 1.2 reads. */
function quoted(text: string): string {
  return JSON.stringify(text.replace(/\s+/g, ' ').trim())
}
