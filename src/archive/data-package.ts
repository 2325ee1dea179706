import type {FileDigest} from '../model/file-digest.ts'
import {freeName} from '../model/free-name.ts'
import type {Settings} from '../model/settings.ts'
import {type DarwinCoreArchive, darwinCoreFolder} from './darwin-core-archive.ts'
import {type RawTable, rawSchema} from './data-package/raw-schema.ts'
import type {TableProfile} from './data-package/table-profile.ts'
import {inferredSchema, type TableSchema} from './data-package/table-schema.ts'
import {termSchema} from './data-package/term-schema.ts'
import type {Contributor, Dataset} from './dataset.ts'

/** A CSV file of the archive, and how it is written. */
export interface DescribedTable {
  /** Path below data/. */
  readonly path: string
  readonly title: string
  readonly profile: TableProfile
  readonly encoding: string
  readonly delimiter: string
  readonly lineTerminator: string
  /** Tables of the study that it holds; none for tables of the report. */
  readonly sources: RawTable['sources']
}

interface Resource {
  readonly name: string
  readonly path: string
  readonly title: string
  readonly schema: TableSchema
  readonly encoding: string
  readonly delimiter: string
  readonly lineTerminator: string
  readonly headerRow: number
  readonly hasComments: boolean
}

const profiles = 'https://datapackage.org/profiles/2.0'

/**
 * Data Package 2.0: every CSV of the archive with its dialect and Table Schema.
 *
 * @param written digests of the files below data/, with paths from there.
 */
export function dataPackage(
  dataset: Dataset,
  settings: Settings,
  described: readonly DescribedTable[],
  darwinCore: DarwinCoreArchive,
  written: readonly FileDigest[]
): string {
  const digests = new Map(written.map((digest) => [digest.path, digest]))
  const resources = [...csvResources(described, settings), ...termResources(darwinCore)]
  const {licence, issued, authors, others} = dataset
  const descriptor = {
    $schema: `${profiles}/datapackage.json`,
    name: dataset.id,
    id: `${dataset.id}/${dataset.fingerprint.slice(0, 16)}`,
    title: dataset.title,
    description: dataset.description,
    ...(issued !== undefined && {created: `${issued}T00:00:00Z`}),
    ...(licence !== undefined && {licenses: [{name: licence.id, path: licence.url, title: licence.name}]}),
    ...(authors.length > 0 && {
      contributors: [...authors.map(contributor(['author'])), ...others.map(contributor([]))]
    }),
    keywords: [...new Set(dataset.keywords)],
    resources: resources.flatMap((resource) => {
      const digest = digests.get(resource.path)
      return digest === undefined ? [] : [resourceOf(resource, digest)]
    })
  }
  return `${JSON.stringify(descriptor, null, 2)}\n`
}

function contributor(usual: readonly string[]) {
  return ({name, parts: {given, family}, orcid, email, role}: Contributor) => {
    const roles = role === undefined ? usual : [...usual, role]
    return {
      title: name,
      ...(given !== undefined && {givenName: given}),
      familyName: family,
      ...(orcid !== undefined && {path: orcid}),
      ...(email !== undefined && {email}),
      ...(roles.length > 0 && {roles})
    }
  }
}

function resourceOf(resource: Resource, {bytes, sha256}: FileDigest) {
  const {name, path, title, schema, encoding, delimiter, lineTerminator, headerRow, hasComments} = resource
  return {
    $schema: `${profiles}/dataresource.json`,
    name,
    title,
    path,
    type: 'table',
    format: 'csv',
    mediatype: 'text/csv',
    encoding,
    bytes,
    hash: `sha256:${sha256}`,
    dialect: {
      $schema: `${profiles}/tabledialect.json`,
      delimiter,
      lineTerminator,
      quoteChar: '"',
      doubleQuote: true,
      header: true,
      ...(headerRow !== 1 && {headerRows: [headerRow]}),
      ...(hasComments && {commentChar: '#'})
    },
    schema
  }
}

function csvResources(described: readonly DescribedTable[], settings: Settings): readonly Resource[] {
  const names = distinct(described.map(({path}) => resourceName(path)))
  const named = described.map((table, index) => ({...table, name: names[index]!}))
  const raw = named
    .filter(({sources}) => sources.length > 0)
    .map(({path, name, sources, profile}): RawTable => ({file: path, resource: name, sources, profile}))
  return named.map((table) => {
    const asRaw = raw.find(({file}) => file === table.path)
    return {
      ...table,
      headerRow: table.profile.headerRow,
      hasComments: table.profile.hasComments,
      schema: asRaw === undefined ? inferredSchema(table.profile) : rawSchema(asRaw, raw, settings)
    }
  })
}

function termResources({tables}: DarwinCoreArchive): readonly Resource[] {
  return tables.map(({file, title, columns}) => ({
    name: resourceName(darwinCoreFolder + file),
    path: darwinCoreFolder + file,
    title,
    schema: termSchema(file, columns, resourceName(`${darwinCoreFolder}event.csv`)),
    encoding: 'utf-8',
    delimiter: ',',
    lineTerminator: '\n',
    headerRow: 1,
    hasComments: false
  }))
}

/** `report-tables-effort-by-site`: letters that any tool takes, and what is left of others told apart by code points. */
function resourceName(path: string): string {
  return path
    .replace(/\.csv$/i, '')
    .toLowerCase()
    .replaceAll('/', '-')
    .replace(/[^a-z0-9._-]/gu, (sign) => (sign === ' ' ? '_' : `u${sign.codePointAt(0)?.toString(16)}`))
}

function distinct(names: readonly string[]): readonly string[] {
  const taken = new Set<string>()
  return names.map((wanted) => {
    const name = freeName(wanted, (one) => taken.has(one))
    taken.add(name)
    return name
  })
}
