import {type TableDescription, type TableName, tables} from '../model/columns.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'
import type {
  CatchRecord,
  Exposure,
  Problem,
  Site,
  SourceTable,
  Study,
  Taxon,
  Trap,
  WeatherDay
} from '../model/study.ts'
import {catchBySite, effortBySite, isEffortBySite, statedSeason} from './effort-by-site.ts'
import {gatherRows} from './gather-rows.ts'
import type {CellConventions} from './read-cell.ts'
import {readSettings} from './read-settings.ts'
import {readTable, type TableOutcome} from './read-table.ts'
import {readText} from './read-text.ts'
import {nameSettler} from './settle-names.ts'
import type {TypedRow} from './table-reader.ts'

export const settingsFile = 'study.yaml'

/** A study that was read, or the reasons why nothing can be said about the folder at all. */
export type StudyOutcome = {readonly study: Study} | {readonly unreadable: readonly Problem[]}

type ReadTable = Exclude<TableOutcome, {readonly unreadable: unknown}>

/** Bytes of a study folder to a typed study with the place of every value. Total: it never throws for what stands in the files. */
export async function parseStudy(source: StudySource): Promise<StudyOutcome> {
  if (!source.files.has(settingsFile)) return {unreadable: [missingSettings(source)]}
  const read = readSettings(settingsFile, await readText(source, settingsFile))
  if ('unreadable' in read) return read
  const {settings} = read
  const unreadable: Problem[] = []
  const found: Partial<Record<TableName, ReadTable>> = {}
  let bySite = false
  for (const described of Object.values(tables)) {
    if (bySite && (described.name === 'traps' || described.name === 'visits')) continue
    const table = bySite && described.name === 'catch' ? catchBySite : described
    const file = fileOf(table, settings)
    if (!source.files.has(file)) {
      if (!table.optional || settings.files?.[table.name] !== undefined)
        unreadable.push(missingTable(file, table.row))
      continue
    }
    const outcome = await readTable(source, table, file, settings, conventionsOf(settings))
    if ('unreadable' in outcome) {
      unreadable.push(...outcome.unreadable)
      continue
    }
    found[table.name] = gathered(table, outcome, settings)
    if (table.name === 'sites') bySite = isEffortBySite(source, settings, outcome.source)
  }
  const season = bySite ? statedSeason(settings) : undefined
  if (season !== undefined && 'code' in season) unreadable.push(season)
  // A slip in study.yaml is often why a column is missed.
  if (unreadable.length > 0) return {unreadable: [...read.problems, ...unreadable]}
  const rows = (name: TableName): readonly TypedRow[] => found[name]?.rows ?? []
  const taxa = rows('taxa') as unknown as readonly Taxon[]
  const settledNames = settleNames(rows('catch'), taxa, found.catch?.source)
  const sources: Partial<Record<TableName, SourceTable>> = {}
  for (const [name, table] of Object.entries(found)) sources[name as TableName] = table.source
  const study: Study = {
    settings,
    settingPlace: read.place,
    sites: rows('sites') as unknown as readonly Site[],
    traps: rows('traps') as unknown as readonly Trap[],
    exposures: rows('visits') as unknown as readonly Exposure[],
    catch: withSortedPart(rows('catch')) as unknown as readonly CatchRecord[],
    taxa,
    weather: rows('weather').map(({date, ...rest}) => ({
      day: date,
      ...rest
    })) as unknown as readonly WeatherDay[],
    tables: sources,
    problems: [...read.problems, ...Object.values(found).flatMap(({problems}) => problems), ...settledNames],
    texts: await readTexts(source, settings)
  }
  if (season === undefined || 'code' in season) return {study}
  return {study: {...study, ...effortBySite(study.sites, study.catch, season), effortBySite: true}}
}

function fileOf(table: TableDescription, settings: Settings): string {
  return settings.files?.[table.name] ?? table.file
}

/** What makes two lines of a file that serves several tables the same site, trap, visit or taxon. */
const keyFields: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  sites: ['siteId'],
  traps: ['trapId'],
  taxa: ['taxon'],
  visits: ['trapId', 'opened', 'collected']
}

/**
 * Where one file serves several tables, its lines describe the same site or trap again and again: they are made
 * one row each. Visits are made one only where the file also holds the catch, line by line.
 */
function gathered(table: TableDescription, outcome: ReadTable, settings: Settings): ReadTable {
  const sharing = Object.values(tables).filter(
    (other) => other !== table && fileOf(other, settings) === outcome.source.file
  )
  const keys = keyFields[table.name]
  if (sharing.length === 0) return outcome
  // Columns that mean nothing to this table belong to another one.
  const problems = outcome.problems.filter(
    ({code}) => code !== 'unknown-column' && code !== 'duplicate-column'
  )
  if (keys === undefined) return {...outcome, problems}
  if (table.name === 'visits' && !sharing.some(({name}) => name === 'catch')) return {...outcome, problems}
  const {rows, disagreements} = gatherRows(outcome.rows, keys)
  const unusable = new Set(problems.filter(({setsAside}) => setsAside).map(({row}) => row)).size
  const disagreeing = [...disagreements].map(
    ([field, differing]): Problem => ({
      code: 'cells-disagree',
      place: {file: outcome.source.file},
      message: `\`${snakeCase(field)}\` differs between lines of the same ${table.name === 'taxa' ? 'taxon' : table.name.slice(0, -1)} (${differing.length} of ${rows.length}); it is left empty there`,
      setsAside: false
    })
  )
  return {
    source: {...outcome.source, rowsRead: rows.length + unusable},
    rows,
    problems: [...problems, ...disagreeing]
  }
}

function snakeCase(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
}

/** Give every catch row the spelling of taxa.csv, and say once for each spelling what was taken for what. */
function settleNames(
  rows: readonly TypedRow[],
  taxa: readonly Taxon[],
  source: SourceTable | undefined
): readonly Problem[] {
  const settle = nameSettler(taxa)
  const changed = new Map<string, {taxon: string; row: number; rows: number}>()
  for (const row of rows) {
    const written = row.taxon as string
    const {taxon, qualifier} = settle(written)
    if (taxon === written) continue
    row.taxon = taxon
    if (qualifier !== undefined) row.qualifier ??= qualifier
    const seen = changed.get(written)
    if (seen) seen.rows += 1
    else changed.set(written, {taxon, row: row.row, rows: 1})
  }
  return [...changed].map(([written, {taxon, row, rows: count}]) => ({
    code: 'name-settled',
    place: source?.place(row, 'taxon') ?? {file: 'catch.csv'},
    message: `\`${written}\` is read as \`${taxon}\` (${count} ${count === 1 ? 'row' : 'rows'})`,
    cell: written,
    setsAside: false
  }))
}

/** An empty sorted part is the whole sample; that it was not stated is remembered. */
function withSortedPart(rows: readonly TypedRow[]): readonly TypedRow[] {
  for (const row of rows) {
    if (row.sampleFraction === undefined) row.sampleFraction = 1
    else row.sampleFractionStated = true
  }
  return rows
}

function conventionsOf(settings: Settings): CellConventions {
  return {
    order: settings.dates,
    decimal: settings.decimal,
    conditions: Object.keys(settings.conditions ?? {}),
    words: settings.words ?? {}
  }
}

/** The author's texts, wherever study.yaml says they are, and the study's own templates, those of a language too. */
async function readTexts(source: StudySource, settings: Settings): Promise<ReadonlyMap<string, string>> {
  const texts = new Map<string, string>()
  const stated = new Set(Object.values(settings.report?.text ?? {}).filter((file) => file.endsWith('.md')))
  for (const file of source.files.keys()) {
    if (stated.has(file) || /^(text\/|templates\/(?:[^/]+\/)?)[^/]+\.(md|css|html)$/.test(file))
      texts.set(file, await readText(source, file))
  }
  return texts
}

function missingSettings(source: StudySource): Problem {
  const near = [...source.files.keys()].find((file) => /(^|\/)study\.ya?ml$/i.test(file))
  return {
    code: 'missing-table',
    place: {file: settingsFile},
    message: 'there is no study.yaml here, so this is not a study folder',
    remedy:
      near === undefined
        ? 'name the folder that holds study.yaml, or start one with `pitfolio init DIR`'
        : `there is a ${near}: is that the folder, or the name, you meant?`,
    setsAside: false
  }
}

function missingTable(file: string, row: string): Problem {
  return {
    code: 'missing-table',
    place: {file},
    message: `${file} is not there; it holds ${row}`,
    remedy: 'add the file, or name yours under `files:` in study.yaml',
    setsAside: false
  }
}
