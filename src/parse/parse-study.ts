import {type TableName, tables} from '../model/columns.ts'
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
import {fileOf} from './file-of.ts'
import {foreignStart} from './foreign-file.ts'
import {gatherShared} from './gather-shared.ts'
import {missingSettings, missingTable, settingsFile} from './missing-files.ts'
import type {CellConventions} from './read-cell.ts'
import {readSettings} from './read-settings.ts'
import {type ReadTable, readTable} from './read-table.ts'
import {readText} from './read-text.ts'
import {settleCatchNames} from './settle-catch-names.ts'
import {noText} from './table-problems.ts'
import type {TypedRow} from './table-reader.ts'

/** A study that was read, or the reasons why nothing can be said about the folder at all. */
export type StudyOutcome = {readonly study: Study} | {readonly unreadable: readonly Problem[]}

/** Bytes of a study folder to a typed study with the place of every value. Total: it never throws for what stands in the files. */
export async function parseStudy(source: StudySource): Promise<StudyOutcome> {
  if (!source.files.has(settingsFile)) return {unreadable: [missingSettings(source)]}
  const foreign = await foreignStart(source, settingsFile)
  if (foreign !== undefined) return {unreadable: [noText(settingsFile, foreign)]}
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
        unreadable.push(missingTable(file, table, source, settings))
      continue
    }
    const outcome = await readTable(source, table, file, settings, conventionsOf(settings))
    if ('unreadable' in outcome) {
      unreadable.push(...outcome.unreadable)
      continue
    }
    found[table.name] = gatherShared(table, outcome, settings)
    if (table.name === 'sites') bySite = isEffortBySite(source, settings, outcome.source)
  }
  const season = bySite ? statedSeason(settings) : undefined
  if (season !== undefined && 'code' in season) unreadable.push(season)
  // A slip in study.yaml is often why a column is missed.
  if (unreadable.length > 0) return {unreadable: [...read.problems, ...unreadable]}
  const rows = (name: TableName): readonly TypedRow[] => found[name]?.rows ?? []
  const taxa = rows('taxa') as unknown as readonly Taxon[]
  const settledNames = settleCatchNames(rows('catch'), taxa, found.catch?.source)
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
