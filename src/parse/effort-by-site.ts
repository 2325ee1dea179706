import type {TableDescription} from '../model/column.ts'
import {tables} from '../model/columns.ts'
import {type Day, dayOf} from '../model/day.ts'
import type {Settings} from '../model/settings.ts'
import type {StudySource} from '../model/source.ts'
import type {CatchRecord, Exposure, Problem, Site, SourceTable, Trap} from '../model/study.ts'

/**
 * Old data often hold no more than counts by site and one effort figure for each site. Such a folder has neither
 * traps.csv nor visits.csv, and sites.csv has a column `trap_nights`.
 */
export function isEffortBySite(source: StudySource, settings: Settings, sites: SourceTable): boolean {
  const absent = (table: TableDescription): boolean =>
    settings.files?.[table.name] === undefined && !source.files.has(table.file)
  return sites.columns.has('trap_nights') && absent(tables.traps) && absent(tables.visits)
}

/** The catch table of such data: a site takes the place of trap and day. */
export const catchBySite: TableDescription = {
  ...tables.catch,
  columns: tables.catch.columns.map((column) => {
    if (column.name === 'trap_id' || column.name === 'collected') {
      const {required: _required, mayBeEmpty: _mayBeEmpty, ...optional} = column
      return optional
    }
    return column.name === 'site_id' ? {...column, required: true} : column
  })
}

export interface EffortBySite {
  readonly traps: readonly Trap[]
  readonly exposures: readonly Exposure[]
  readonly catch: readonly CatchRecord[]
}

/** The season that study.yaml states, as days; or what is missing. */
export function statedSeason(settings: Settings): {readonly start: Day; readonly end: Day} | Problem {
  const start = dayOfText(settings.season?.start)
  const end = dayOfText(settings.season?.end)
  if (start !== undefined && end !== undefined && start < end) return {start, end}
  return {
    code: 'missing-table',
    place: {file: 'study.yaml'},
    message: 'there are no visits, and study.yaml does not say from when to when the traps stood',
    remedy: 'say `season: {start: 1987-05-01, end: 1987-09-30}`, or add traps.csv and visits.csv',
    setsAside: false
  }
}

/** One trap and one exposure for each site, over the stated season; every catch record is of that exposure. */
export function effortBySite(
  sites: readonly Site[],
  records: readonly CatchRecord[],
  {start, end}: {readonly start: Day; readonly end: Day}
): EffortBySite {
  const caught = new Set(records.map(({siteId}) => siteId))
  return {
    traps: sites.map(({row, siteId}) => ({row, trapId: siteId, siteId})),
    exposures: sites.map(({row, siteId, trapNights}) => ({
      row,
      trapId: siteId,
      ...(trapNights !== undefined && {opened: {day: start}, statedNights: trapNights}),
      collected: {day: end},
      condition: 'intact',
      ...(caught.has(siteId) && {sample: 'sorted' as const}),
      round: 'season'
    })),
    catch: records.map((record) => ({
      ...record,
      ...(record.siteId !== undefined && {trapId: record.siteId}),
      collected: {day: end}
    }))
  }
}

function dayOfText(text: string | undefined): Day | undefined {
  const [year = 0, month = 0, dayOfMonth = 0] = (text ?? '').split('-').map(Number)
  return text === undefined ? undefined : dayOf(year, month, dayOfMonth)
}
