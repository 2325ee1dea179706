import type {DescribedRow} from '../model/described-row.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'
import type {CatchRecord, Problem, Study} from '../model/study.ts'
import {effortBySite, statedSeason} from './effort-by-site.ts'
import {foreignStart} from './foreign-file.ts'
import {missingSettings, settingsFile} from './missing-files.ts'
import {readSettings} from './read-settings.ts'
import {readTables, rowsOf} from './read-tables.ts'
import {readText} from './read-text.ts'
import {settleCatchNames} from './settle-catch-names.ts'
import {noText} from './table-problems.ts'

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
  const {found, isBySite, unreadable} = await readTables(source, settings)
  const season = isBySite ? statedSeason(settings) : undefined
  const missing = season !== undefined && 'code' in season ? [season] : []
  // A slip in study.yaml is often why a column is missed.
  if (unreadable.length + missing.length > 0)
    return {unreadable: [...read.problems, ...unreadable, ...missing]}
  const taxa = rowsOf(found, 'taxa')
  const records = rowsOf(found, 'catch')
  const settledNames = settleCatchNames(records, taxa, found.get('catch')?.source)
  const study: Study = {
    settings,
    settingPlace: read.place,
    sites: rowsOf(found, 'sites'),
    traps: rowsOf(found, 'traps'),
    exposures: rowsOf(found, 'visits'),
    catch: withSortedPart(records),
    taxa,
    weather: rowsOf(found, 'weather').map(({date, ...rest}) => ({day: date, ...rest})),
    tables: Object.fromEntries([...found].map(([name, table]) => [name, table.source])),
    problems: [...read.problems, ...[...found.values()].flatMap(({problems}) => problems), ...settledNames],
    texts: await readTexts(source, settings)
  }
  if (season === undefined || 'code' in season) return {study}
  return {study: {...study, ...effortBySite(study.sites, study.catch, season), effortBySite: true}}
}

/** An empty sorted part is the whole sample; that it was not stated is remembered. In place: there may be a million. */
function withSortedPart(rows: readonly DescribedRow<'catch'>[]): readonly CatchRecord[] {
  for (const row of rows) {
    const record: {sampleFraction?: number; sampleFractionStated?: true} = row
    if (record.sampleFraction === undefined) record.sampleFraction = 1
    else record.sampleFractionStated = true
  }
  return rows as readonly CatchRecord[]
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
