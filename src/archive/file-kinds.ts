import {tables} from '../model/columns.ts'
import type {SourceTable} from '../model/study.ts'

/** Media type of a file by its name; the general one where the name says nothing. */
export function mediaType(path: string): string {
  const ending = /\.([^./]+)$/.exec(path)?.[1]?.toLowerCase() ?? ''
  return mediaTypes[ending] ?? 'application/octet-stream'
}

const mediaTypes: Readonly<Record<string, string>> = {
  bib: 'application/x-bibtex',
  cff: 'application/yaml',
  css: 'text/css',
  csv: 'text/csv',
  docx: 'application/vnd.openxmlformats-officedocument.wordprocessingml.document',
  gif: 'image/gif',
  html: 'text/html',
  jpeg: 'image/jpeg',
  jpg: 'image/jpeg',
  json: 'application/json',
  jsonld: 'application/ld+json',
  md: 'text/markdown',
  pdf: 'application/pdf',
  png: 'image/png',
  svg: 'image/svg+xml',
  txt: 'text/plain',
  webp: 'image/webp',
  xml: 'application/xml',
  yaml: 'application/yaml',
  yml: 'application/yaml'
}

const known: Readonly<Record<string, string>> = {
  'README.md': 'What this archive is, how to check it and how to use it',
  'CITATION.cff': 'How to cite these data (Citation File Format)',
  'archive.json': 'What made the archive, and what is held back',
  'datapackage.json': 'Description of every CSV file (Data Package 2.0)',
  'dwca/meta.xml': 'Which file of the Darwin Core archive holds which terms',
  'dwca/eml.xml': 'Description of the data set (Ecological Metadata Language 2.2.0)',
  'dwca/event.csv': 'Events: season, sites, traps and exposures (Darwin Core)',
  'dwca/occurrence.csv': 'Occurrences (Darwin Core)',
  'dwca/measurement.csv': 'Measurements and facts about events (Darwin Core)',
  'dwca/humboldt.csv': 'Scope, effort and completeness of events (Humboldt Extension)',
  'raw/study.yaml': 'Who, where, why and how, as the authors wrote it',
  'report/index.html': 'Front page of the report',
  'report/chapter.html': 'Methods and results for a thesis',
  'report/season.html': 'The full record of the season',
  'report/references.bib': 'Works that the report cites',
  'report/results.json': 'Every computed number of the report',
  'report/findings.json': 'Everything found in the records, and what became of every row',
  'report/provenance.json': 'What the report was made from, with checksums'
}

/** What a file of the archive is, in a few words, by its path below data/. */
export function fileTitle(path: string, sources: readonly SourceTable[] = []): string {
  const said = known[path]
  if (said !== undefined) return said
  if (sources.length > 0) return `Raw records: ${sources.map(({name}) => tables[name].row).join('; ')}`
  const name = path.slice(path.lastIndexOf('/') + 1)
  const plain = name.replace(/\.[^.]+$/, '').replaceAll('-', ' ')
  if (path.startsWith('raw/')) return `File of the study: ${path.slice('raw/'.length)}`
  if (path.startsWith('report/tables/')) return `Table of the report: ${plain}`
  if (path.startsWith('report/figures/'))
    return `${name.endsWith('.csv') ? 'Data behind a figure' : 'Figure'} of the report: ${plain}`
  return path.startsWith('report/') ? `Document of the report: ${name}` : name
}
