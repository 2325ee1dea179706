import {type CatchMatching, matchCatch} from '../model/catch-matching.ts'
import type {TableName} from '../model/column.ts'
import type {RowReference} from '../model/finding.ts'
import type {Place} from '../model/place.ts'
import type {CatchRecord, Exposure, Site, Study, Taxon, Trap} from '../model/study.ts'
import {type Fieldwork, fieldworkOf} from './fieldwork.ts'

/** Look-ups that several rules need, made once; and the rows that earlier rules have set aside. */
export interface StudyIndex {
  /** Every rule there is: whether a study may judge it otherwise. */
  readonly rules: ReadonlyMap<string, {readonly settled?: true}>
  readonly sites: ReadonlyMap<string, Site>
  readonly traps: ReadonlyMap<string, Trap>
  readonly taxa: ReadonlyMap<string, Taxon>
  /** Exposures of each trap in order of opening (unknown openings by collection). */
  readonly exposuresOfTrap: ReadonlyMap<string, readonly Exposure[]>
  readonly matching: CatchMatching
  /** Catch records of collections in which some taxon stands more than once: the only ones that can hold repeats. */
  readonly collectionsWithRepeats: readonly (readonly CatchRecord[])[]
  /** Only for rules that run after all those that set rows aside: it is put together once, when first asked for. */
  readonly fieldwork: Fieldwork
  isAside(table: TableName, row: number): boolean
  place(table: TableName, row: number, column?: string): Place
}

export function studyIndex(
  study: Study,
  aside: ReadonlyMap<TableName, ReadonlyMap<number, string>>,
  rules: StudyIndex['rules']
): StudyIndex {
  const traps = firstById(study.traps, ({trapId}) => trapId)
  const exposuresOfTrap = new Map<string, Exposure[]>()
  for (const exposure of study.exposures) {
    const list = exposuresOfTrap.get(exposure.trapId)
    if (list) list.push(exposure)
    else exposuresOfTrap.set(exposure.trapId, [exposure])
  }
  for (const list of exposuresOfTrap.values()) list.sort((a, b) => startOf(a) - startOf(b) || a.row - b.row)
  const matching = matchCatch(study.exposures, study.catch, (trapId) => traps.get(trapId)?.siteId)
  let fieldwork: Fieldwork | undefined
  return {
    rules,
    sites: firstById(study.sites, ({siteId}) => siteId),
    traps,
    taxa: firstById(study.taxa, ({taxon}) => taxon),
    exposuresOfTrap,
    matching,
    collectionsWithRepeats: collectionsWithRepeats(matching),
    get fieldwork() {
      fieldwork ??= fieldworkOf(study, aside)
      return fieldwork
    },
    isAside: (table, row) => aside.get(table)?.has(row) ?? false,
    place: (table, row, column) => study.tables[table]?.place(row, column) ?? {file: `${table}.csv`}
  }
}

function collectionsWithRepeats(matching: CatchMatching): readonly (readonly CatchRecord[])[] {
  const collections = [...matching.ofExposure.values(), matching.pooled.map(({record}) => record)]
  return collections.filter((records) => new Set(records.map(({taxon}) => taxon)).size < records.length)
}

function startOf({opened, collected}: Exposure): number {
  const moment = opened ?? collected
  return moment.day + (moment.minutes ?? 0) / 1440
}

function firstById<Row>(rows: readonly Row[], id: (row: Row) => string): ReadonlyMap<string, Row> {
  const byId = new Map<string, Row>()
  for (const row of rows) if (!byId.has(id(row))) byId.set(id(row), row)
  return byId
}

export function reference(table: TableName, {row}: {readonly row: number}): RowReference {
  return {table, row}
}
