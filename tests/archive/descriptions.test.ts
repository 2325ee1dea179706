import {createHash} from 'node:crypto'
import {readFileSync} from 'node:fs'
import iconv from 'iconv-lite'
import {load} from 'js-yaml'
import jsonld from 'jsonld'
import {describe, expect, test} from 'vitest'
import {personName} from '../../src/archive/person-name.ts'
import {testWith} from '../needs.ts'
import {archivedFiles, textOf} from './archive-on-disk.ts'
import {checkDataPackage, type Resource} from './check-data-package.ts'
import {jsonValidator, publishedSchema} from './published-schemas.ts'
import {openStudy, privateStudy} from './small-study.ts'

const below = (files: ReadonlyMap<string, Uint8Array>) =>
  new Map(
    [...files].flatMap(([path, bytes]) => (path.startsWith('data/') ? [[path.slice(5), bytes] as const] : []))
  )

/** The same records as a spreadsheet with German habits writes them: semicolons, decimal commas, a title above, codes. */
const exported = {
  ...openStudy,
  'study.yaml': `${openStudy['study.yaml']}dates: dmy
decimal: comma
encoding: windows-1252
words: {condition: {ok: intact, "-": ''}}
columns:
  visits: {collected: geleert}
`,
  'sites.csv': iconv.encode(
    openStudy['sites.csv']!.replaceAll(',', ';')
      .replace(/(\d)\.(\d)/g, '$1,$2')
      .replace('"steep; wet"', 'Größe 3 €')
      .replaceAll('\n', '\r\n'),
    'windows-1252'
  ),
  'visits.csv': `Fallen 2026;;;;;;;\n${openStudy['visits.csv']!.replaceAll(',', ';')
    .replace('collected', 'geleert')
    .replace(/(\d{4})-(\d\d)-(\d\d)/g, '$3.$2.$1')
    .replaceAll('intact', 'ok')}`,
  'traps.csv': openStudy['traps.csv']!.replaceAll(',', ';').replaceAll('.', ','),
  'catch.csv': openStudy['catch.csv']!.replace(/(\d{4})-(\d\d)-(\d\d)/g, '$3.$2.$1')
    .replace('0.5', '"0,5"')
    .replace(',7,,', ',12*,,'),
  'taxa.csv': openStudy['taxa.csv']!
}

/** File names that an address cannot hold as they are. */
const oddNames = {
  ...openStudy,
  'photos/100 % sure? #2 [å] & "x".txt': 'a',
  "photos/it's (1), +1; ~a@b:c.txt": 'b',
  'photos/%20.txt': 'c',
  'photos/\u00e5 and a\u030a.txt': 'd'
}

async function packageOf(study: Readonly<Record<string, string | Uint8Array>>) {
  const {files} = await archivedFiles(study)
  const descriptor = JSON.parse(textOf(files, 'data/datapackage.json')) as {resources: Resource[]}
  return {
    descriptor,
    files: below(files),
    resource: (name: string) => descriptor.resources.find((one) => one.name === name)!
  }
}

describe('the Data Package', () => {
  testWith('the published schemas')(
    'is valid by the published profile of Data Package 2.0, and a broken one is not',
    async () => {
      const isValid = jsonValidator('dp2-datapackage.json')
      for (const study of [openStudy, privateStudy, exported]) {
        const {descriptor} = await packageOf(study)
        expect(isValid(descriptor), JSON.stringify(isValid.errors)).toBe(true)
      }
      const {descriptor} = await packageOf(openStudy)
      expect(isValid({...descriptor, resources: []})).toBe(false)
      expect(isValid({...descriptor, resources: [{...descriptor.resources[0], path: '../secret.csv'}]})).toBe(
        false
      )
    }
  )

  test('describes every CSV file of the archive, and every cell is what its schema says', async () => {
    for (const study of [openStudy, privateStudy, exported]) {
      const {descriptor, files} = await packageOf(study)
      expect(descriptor.resources.map(({path}) => path).sort()).toEqual(
        [...files.keys()].filter((path) => path.endsWith('.csv')).sort()
      )
      expect(checkDataPackage(descriptor.resources, files)).toEqual([])
    }
  })

  test('says of raw tables what pitfolio takes their columns for: types, bounds, words, keys', async () => {
    const {resource} = await packageOf(openStudy)
    const field = (name: string, column: string) =>
      resource(name).schema.fields.find((one) => one.name === column)
    expect(field('raw-catch', 'count')).toMatchObject({
      type: 'integer',
      constraints: {required: true, minimum: 0},
      description: 'individuals counted'
    })
    expect(field('raw-visits', 'opened')).toMatchObject({type: 'date'})
    expect(field('raw-visits', 'sample')).toMatchObject({
      constraints: {enum: ['sorted', 'empty', 'unsorted', 'lost']}
    })
    expect(field('raw-sites', 'latitude')).toMatchObject({
      type: 'number',
      constraints: {minimum: -90, maximum: 90}
    })
    expect(field('raw-catch', 'sample_fraction')).toMatchObject({
      constraints: {exclusiveMinimum: 0, maximum: 1}
    })
    expect(resource('raw-sites').schema.primaryKey).toEqual(['site_id'])
    expect(resource('raw-traps').schema.foreignKeys).toEqual([
      {fields: ['site_id'], reference: {resource: 'raw-sites', fields: ['site_id']}}
    ])
    expect(resource('raw-catch').schema.foreignKeys).toEqual([
      {fields: ['trap_id'], reference: {resource: 'raw-traps', fields: ['trap_id']}},
      {fields: ['taxon'], reference: {resource: 'raw-taxa', fields: ['taxon']}}
    ])
    expect(resource('dwca-event').schema.foreignKeys).toEqual([
      {fields: ['parentEventID'], reference: {fields: ['eventID']}}
    ])
  })

  test('says of the tables of other people how they are written, and claims no more than every cell bears out', async () => {
    const {resource} = await packageOf(exported)
    const field = (name: string, column: string) =>
      resource(name).schema.fields.find((one) => one.name === column)
    expect(resource('raw-sites')).toMatchObject({
      encoding: 'windows-1252',
      dialect: {delimiter: ';', lineTerminator: '\r\n'}
    })
    expect(resource('raw-visits').dialect).toMatchObject({delimiter: ';', headerRows: [2]})
    expect(field('raw-sites', 'latitude')).toMatchObject({type: 'number', decimalChar: ','})
    expect(field('raw-visits', 'geleert')).toMatchObject({title: 'collected', type: 'string'})
    expect(field('raw-visits', 'condition')).toMatchObject({missingValues: ['', '-']})
    // One cell is `12*`, which is no number: the column stays text.
    expect(field('raw-catch', 'count')).toMatchObject({type: 'string'})
  })
})

describe('the RO-Crate', () => {
  type Entity = Readonly<Record<string, unknown>> & {readonly '@id': string; readonly '@type': string}
  const graphOf = async (study = openStudy) => {
    const {files} = await archivedFiles(study)
    const crate = JSON.parse(textOf(files, 'data/ro-crate-metadata.json')) as {'@graph': Entity[]}
    return {
      crate,
      files: below(files),
      entity: (id: string) => crate['@graph'].find((one) => one['@id'] === id)
    }
  }

  test('describes every file with its size and checksum, and everything hangs on the root', async () => {
    for (const study of [openStudy, privateStudy]) {
      const {crate, files, entity} = await graphOf(study)
      const described = crate['@graph'].filter((one) => one['@type'] === 'File')
      const wanted = [...files.keys()].filter((path) => path !== 'ro-crate-metadata.json').sort()
      expect(described.map((one) => decodeURIComponent(one['@id'])).sort()).toEqual(wanted)
      for (const one of described) {
        const bytes = files.get(decodeURIComponent(one['@id']))!
        expect(one).toMatchObject({
          contentSize: `${bytes.length}`,
          sha256: createHash('sha256').update(bytes).digest('hex')
        })
      }
      expect(entity('./')).toMatchObject({hasPart: described.map((one) => ({'@id': one['@id']}))})
      // Nothing is named that is not there.
      const ids = new Set(crate['@graph'].map((one) => one['@id']))
      const references = [...JSON.stringify(crate['@graph']).matchAll(/\{"@id":"([^"]+)"\}/g)].map(
        ([, id = '']) => id
      )
      for (const id of references.filter((one) => !one.startsWith('https://w3id.org/ro/crate')))
        expect([...ids]).toContain(id)
      expect(ids.size).toBe(crate['@graph'].length)
    }
  })

  test('has people with ORCID iDs, the licence as an SPDX address, place, time and the run that made the report', async () => {
    const {entity, crate} = await graphOf()
    expect(entity('./')).toMatchObject({
      author: {'@id': 'https://orcid.org/0000-0002-1825-0097'},
      license: {'@id': 'https://spdx.org/licenses/CC-BY-4.0'},
      temporalCoverage: '2026-05-04/2026-06-01',
      datePublished: '2026-12-01'
    })
    expect(entity('https://orcid.org/0000-0002-1825-0097')).toMatchObject({
      name: 'Ada Ash',
      familyName: 'Ash'
    })
    expect(entity('#box')).toMatchObject({box: '51.2034 9.1034 51.2178 9.1299'})
    const run = crate['@graph'].find((one) => one['@type'] === 'CreateAction')!
    expect(run.object).toContainEqual({'@id': 'raw/catch.csv'})
    expect(run.object).not.toContainEqual({'@id': 'raw/photos/field%20book.txt'})
    expect(run.result).toContainEqual({'@id': 'report/results.json'})
  })

  testWith('the published schemas')(
    'is JSON-LD that a JSON-LD library expands whole, with every term known to the published context',
    async () => {
      const context: unknown = JSON.parse(readFileSync(publishedSchema('rocrate-1.2.jsonld'), 'utf8'))
      const documentLoader = (url: string) => {
        if (url !== 'https://w3id.org/ro/crate/1.2/context')
          return Promise.reject(new Error(`${url} is not to be fetched`))
        return Promise.resolve({contextUrl: null, documentUrl: url, document: context})
      }
      // Relative ids are resolved against wherever the crate stands.
      const base = 'https://crate.example/a%20place/'
      for (const study of [openStudy, privateStudy, oddNames]) {
        const {crate, files} = await graphOf(study)
        const expanded = await jsonld.expand(crate, {documentLoader, base})
        expect(expanded).toHaveLength(crate['@graph'].length)
        // A term that the context does not know is dropped without a word, so every member is counted.
        for (const [index, entity] of crate['@graph'].entries()) {
          const found = expanded[index]!
          expect(found['@id']).toBe(new URL(entity['@id'], base).href)
          const members = Object.entries(entity).filter(
            ([key, value]) => key !== '@id' && value !== undefined
          )
          expect(
            Object.keys(found).filter((key) => key !== '@id'),
            entity['@id']
          ).toHaveLength(members.length)
        }
        const isFile = (types: unknown) => (types as string[]).includes('http://schema.org/MediaObject')
        const paths = expanded
          .filter((found) => isFile(found['@type']))
          .map((found) => decodeURIComponent(`${found['@id']}`.slice(base.length)))
        expect(paths.sort()).toEqual(
          [...files.keys()].filter((path) => path !== 'ro-crate-metadata.json').sort()
        )
      }
    }
  )
})

describe('the citation', () => {
  testWith('the published schemas')(
    'is valid by the published schema of CFF 1.2.0 for every licence that a study may name',
    async () => {
      const isValid = jsonValidator('cff-1.2.0.json')
      for (const licence of [
        'CC-BY-4.0',
        'CC0-1.0',
        'CC-BY-NC-4.0',
        'CC-BY-3.0-IGO',
        'ODbL-1.0',
        'our own terms',
        'GPL-3.0-or-later',
        'CC-BY-NC-SA-2.0-DE'
      ]) {
        const {files} = await archivedFiles({
          ...openStudy,
          'study.yaml': openStudy['study.yaml']!.replace('CC-BY-4.0', licence)
        })
        const cff: unknown = load(textOf(files, 'data/CITATION.cff'))
        expect(isValid(cff), JSON.stringify(isValid.errors)).toBe(true)
      }
      const {files} = await archivedFiles({
        ...openStudy,
        'study.yaml': 'title: T\nanalysis: {replicates: 10, permutations: 99}\n'
      })
      expect(isValid(load(textOf(files, 'data/CITATION.cff'))), JSON.stringify(isValid.errors)).toBe(true)
    }
  )

  test('names the authors as they are to be cited', async () => {
    const {files} = await archivedFiles(openStudy)
    expect(load(textOf(files, 'data/CITATION.cff'))).toMatchObject({
      title: 'Beetles & spiders of "two places" <2026>',
      authors: [
        {'given-names': 'Ada', 'family-names': 'Ash', orcid: 'https://orcid.org/0000-0002-1825-0097'}
      ],
      license: 'CC-BY-4.0',
      'date-released': '2026-12-01'
    })
    expect(personName('Jan van der Berg')).toEqual({given: 'Jan', family: 'van der Berg'})
    expect(personName('Berg, Jan  van der')).toEqual({given: 'Jan van der', family: 'Berg'})
    expect(personName('Linnaeus')).toEqual({family: 'Linnaeus'})
  })

  test('title, licence, dates and people are the same in every description', async () => {
    const {files} = await archivedFiles(openStudy)
    const title = 'Beetles & spiders of "two places" <2026>'
    const eml = textOf(files, 'data/dwca/eml.xml')
    expect(eml).toContain(
      `<title xml:lang="en">${title.replace('&', '&amp;').replace('<', '&lt;').replace('>', '&gt;')}</title>`
    )
    for (const words of [
      '<identifier>CC-BY-4.0</identifier>',
      '<pubDate>2026-12-01</pubDate>',
      '<calendarDate>2026-05-04</calendarDate>',
      '<calendarDate>2026-06-01</calendarDate>',
      '<userId directory="https://orcid.org">https://orcid.org/0000-0002-1825-0097</userId>',
      '<westBoundingCoordinate>9.1034</westBoundingCoordinate>'
    ])
      expect(eml).toContain(words)
    expect(JSON.parse(textOf(files, 'data/datapackage.json'))).toMatchObject({
      title,
      licenses: [{name: 'CC-BY-4.0'}],
      created: '2026-12-01T00:00:00Z'
    })
    expect(textOf(files, 'bag-info.txt')).toContain('Bagging-Date: 2026-12-01')
  })
})
