import {type TableName, tables} from '../model/columns.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'
import type {CatchRecord, Exposure, Problem, Site, SourceTable, Study, Taxon, Trap, WeatherDay} from '../model/study.ts'
import type {CellConventions} from './read-cell.ts'
import {readSettings} from './read-settings.ts'
import {readTable} from './read-table.ts'
import {readText} from './read-text.ts'
import type {TypedRow} from './table-reader.ts'

export const settingsFile = 'study.yaml'

/** A study that was read, or the reasons why nothing can be said about the folder at all. */
export type StudyOutcome = {readonly study: Study} | {readonly unreadable: readonly Problem[]}

/** Bytes of a study folder to a typed study with the place of every value. Total: it never throws for what stands in the files. */
export async function parseStudy(source: StudySource): Promise<StudyOutcome> {
  if (!source.files.has(settingsFile)) return {unreadable: [missingSettings(source)]}
  const read = readSettings(settingsFile, await readText(source, settingsFile))
  if ('unreadable' in read) return read
  const {settings} = read
  const conventions = conventionsOf(settings)
  const problems: Problem[] = [...read.problems]
  const unreadable: Problem[] = []
  const sources: Partial<Record<TableName, SourceTable>> = {}
  const rows: Partial<Record<TableName, readonly TypedRow[]>> = {}
  for (const table of Object.values(tables)) {
    const file = settings.files?.[table.name] ?? table.file
    if (!source.files.has(file)) {
      if (!table.optional || settings.files?.[table.name] !== undefined) unreadable.push(missingTable(file, table.row))
      continue
    }
    const outcome = await readTable(source, table, file, settings, conventions)
    if ('unreadable' in outcome) {
      unreadable.push(...outcome.unreadable)
    } else {
      sources[table.name] = outcome.source
      rows[table.name] = outcome.rows
      for (const problem of outcome.problems) problems.push(problem)
    }
  }
  if (unreadable.length > 0) return {unreadable}
  const study: Study = {
    settings,
    settingPlace: read.place,
    sites: (rows.sites ?? []) as unknown as readonly Site[],
    traps: (rows.traps ?? []) as unknown as readonly Trap[],
    exposures: (rows.visits ?? []).map(withCondition) as unknown as readonly Exposure[],
    catch: (rows.catch ?? []).map(withDefaults) as unknown as readonly CatchRecord[],
    taxa: (rows.taxa ?? []) as unknown as readonly Taxon[],
    weather: (rows.weather ?? []).map(({date, ...rest}) => ({day: date, ...rest})) as unknown as readonly WeatherDay[],
    tables: sources,
    problems,
    texts: await readTexts(source)
  }
  return {study}
}

function withCondition(row: TypedRow): TypedRow {
  row.condition ??= 'intact'
  return row
}

/** An empty life stage is an adult, an empty sorted part is the whole: what a field entomologist means by leaving the cell. */
function withDefaults(row: TypedRow): TypedRow {
  row.lifeStage ??= 'adult'
  row.sampleFraction ??= 1
  return row
}

function conventionsOf(settings: Settings): CellConventions {
  return {
    order: settings.dates,
    decimal: settings.decimal,
    conditions: Object.keys(settings.conditions ?? {}),
    words: settings.words ?? {}
  }
}

async function readTexts(source: StudySource): Promise<ReadonlyMap<string, string>> {
  const texts = new Map<string, string>()
  for (const file of source.files.keys()) {
    if (/^(text|templates)\/[^/]+\.(md|css|html)$/.test(file)) texts.set(file, await readText(source, file))
  }
  return texts
}

function missingSettings(source: StudySource): Problem {
  const near = [...source.files.keys()].find((file) => /^study\.ya?ml$/i.test(file) || /\/study\.ya?ml$/i.test(file))
  return {
    code: 'missing-table',
    place: {file: settingsFile},
    message: 'there is no study.yaml here, so this is not a study folder',
    remedy: near === undefined ? 'name the folder that holds study.yaml, or start one with `pitfolio init DIR`' : `there is a ${near}: is that the folder, or the name, you meant?`,
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
