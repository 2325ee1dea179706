import type {FileDigest} from '../model/file-digest.ts'
import type {Contributor, Dataset} from './dataset.ts'
import {mediaType} from './file-kinds.ts'

/** RO-Crate 1.2: nothing used here differs in 1.3, and more readers know it. */
const version = 'https://w3id.org/ro/crate/1.2'
const processRun = 'https://w3id.org/ro/wfrun/process/0.5'

export const crateFile = 'ro-crate-metadata.json'

type Entity = Readonly<Record<string, unknown>> & {readonly '@id': string}

/**
 * Every file of the archive, who made it, when, where, under which licence, and the run that made the report: as
 * JSON-LD, flat.
 *
 * @param written digests of the files below data/, with paths from there.
 * @param titleOf what a file is, in a few words.
 * @param inputs paths of the raw files that the report was made from.
 */
export function roCrate(
  dataset: Dataset,
  written: readonly FileDigest[],
  titleOf: (path: string) => string,
  inputs: readonly string[]
): string {
  const graph: readonly Entity[] = [
    {
      '@id': crateFile,
      '@type': 'CreativeWork',
      about: {'@id': './'},
      conformsTo: {'@id': version}
    },
    root(dataset, written),
    ...written.map((digest) => file(digest, titleOf)),
    ...licenceEntities(dataset),
    ...[...dataset.authors, ...dataset.others].map(person),
    ...placeEntities(dataset),
    {'@id': processRun, '@type': 'CreativeWork', name: 'Process Run Crate', version: '0.5'},
    software(dataset),
    run(dataset, written, inputs)
  ]
  // Two people of one name and without an ORCID iD cannot be told apart.
  const entities = [...new Map(graph.map((entity) => [entity['@id'], entity])).values()]
  return `${JSON.stringify({'@context': `${version}/context`, '@graph': entities}, null, 2)}\n`
}

/** A single value stands alone, several in a list. */
function one<Value>(values: readonly Value[]): Value | readonly Value[] | undefined {
  return values.length <= 1 ? values[0] : values
}

function root(dataset: Dataset, written: readonly FileDigest[]): Entity {
  const {id, title, description, licence, licenceWords, issued, begins, ends, place, authors, others} =
    dataset
  return {
    '@id': './',
    '@type': 'Dataset',
    conformsTo: {'@id': processRun},
    identifier: id,
    name: title,
    description,
    datePublished: issued ?? ends ?? 'unknown',
    license: licence === undefined ? (licenceWords ?? 'not stated') : {'@id': licenceId(licence.id)},
    author: one(authors.map((author) => ({'@id': personId(author)}))),
    contributor: one(others.map((other) => ({'@id': personId(other)}))),
    keywords: [...new Set(dataset.keywords)].join(', '),
    ...(begins !== undefined && ends !== undefined && {temporalCoverage: `${begins}/${ends}`}),
    ...(place !== undefined && {contentLocation: {'@id': '#place'}}),
    hasPart: written.map(({path}) => ({'@id': fileId(path)})),
    mentions: {'@id': runId(dataset)}
  }
}

function file({path, bytes, sha256}: FileDigest, titleOf: (path: string) => string): Entity {
  return {
    '@id': fileId(path),
    '@type': 'File',
    name: titleOf(path),
    contentSize: `${bytes}`,
    encodingFormat: mediaType(path),
    sha256
  }
}

/** A path as a relative address. */
function fileId(path: string): string {
  return path.split('/').map(encodeURIComponent).join('/')
}

function licenceId(id: string): string {
  return `https://spdx.org/licenses/${id}`
}

function licenceEntities({licence}: Dataset): readonly Entity[] {
  if (licence === undefined) return []
  const {id, name, url} = licence
  return [
    {
      '@id': licenceId(id),
      '@type': 'CreativeWork',
      name,
      description: `The legal text stands at ${url}`,
      identifier: id,
      url
    }
  ]
}

function personId({name, orcid}: Contributor): string {
  return orcid ?? `#${encodeURIComponent(name)}`
}

function person(contributor: Contributor): Entity {
  const {
    name,
    parts: {given, family},
    email,
    role
  } = contributor
  return {
    '@id': personId(contributor),
    '@type': 'Person',
    name,
    ...(given !== undefined && {givenName: given}),
    familyName: family,
    ...(email !== undefined && {email}),
    ...(role !== undefined && {description: role})
  }
}

function placeEntities({place, box}: Dataset): readonly Entity[] {
  if (place === undefined) return []
  const shape = {'@id': '#box'}
  return [
    {'@id': '#place', '@type': 'Place', name: place, ...(box !== undefined && {geo: shape})},
    ...(box === undefined
      ? []
      : [
          {
            ...shape,
            '@type': 'GeoShape',
            name: 'Box round the positions of the sites, as they are published',
            box: `${box.south} ${box.west} ${box.north} ${box.east}`
          }
        ])
  ]
}

function softwareId({toolVersion}: Dataset): string {
  return `#pitfolio-${toolVersion}`
}

function software(dataset: Dataset): Entity {
  return {
    '@id': softwareId(dataset),
    '@type': 'SoftwareApplication',
    name: 'pitfolio',
    softwareVersion: dataset.toolVersion,
    version: dataset.toolVersion,
    softwareRequirements: 'Node.js 20 or later',
    description: `Install with \`npm install --global pitfolio@${dataset.toolVersion}\`; see README.md`
  }
}

function runId({fingerprint}: Dataset): string {
  return `#run-${fingerprint.slice(0, 16)}`
}

function run(dataset: Dataset, written: readonly FileDigest[], inputs: readonly string[]): Entity {
  const [lead] = dataset.authors
  const there = new Set(written.map(({path}) => path))
  const {issued, ends} = dataset
  const day = issued ?? ends
  return {
    '@id': runId(dataset),
    '@type': 'CreateAction',
    name: 'The report made from the raw records',
    ...(day !== undefined && {endTime: day}),
    instrument: {'@id': softwareId(dataset)},
    ...(lead !== undefined && {agent: {'@id': personId(lead)}}),
    object: inputs.filter((path) => there.has(path)).map((path) => ({'@id': fileId(path)})),
    result: written.flatMap(({path}) => (path.startsWith('report/') ? [{'@id': fileId(path)}] : []))
  }
}
