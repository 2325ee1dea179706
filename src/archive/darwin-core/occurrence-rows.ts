import type {CatchRecord} from '../../model/study.ts'
import type {Dataset} from '../dataset.ts'
import {type Identification, identificationOf} from './identification.ts'
import {nameColumns, type OccurrenceRow, occurrenceColumns} from './occurrence-columns.ts'
import type {SeasonEvents, VisitEvent} from './season-events.ts'
import {isReportedEmpty, type Target} from './target.ts'
import type {TermTable} from './term-table.ts'

/** What was caught: one row per name, sex, life stage and doubt of a collection; and traps that stood intact and caught nothing sought. */
export function occurrenceTable(
  events: SeasonEvents,
  dataset: Dataset,
  target: Target | undefined
): TermTable<OccurrenceRow> {
  const all = occurrenceColumns(dataset)
  const first = all.indexOf(nameColumns[0]!)
  return {
    file: 'occurrence.csv',
    rowType: 'dwc:Occurrence',
    title:
      'Occurrences: what each collection held, and which of the groups sought an intact trap did not catch',
    columns: all,
    repeated: {from: first, to: first + nameColumns.length, of: ({name}) => name},
    constants: [
      ['dwc:kingdom', 'Animalia'],
      ['dwc:nomenclaturalCode', 'ICZN'],
      ['dwc:organismQuantityType', 'individuals']
    ],
    rows: () => occurrenceRows(events, dataset, target)
  }
}

function* occurrenceRows(
  events: SeasonEvents,
  dataset: Dataset,
  target: Target | undefined
): Iterable<OccurrenceRow> {
  const identify = identifier(events)
  for (const site of events.sites) {
    for (const trap of site.traps) {
      for (const visit of trap.visits) {
        const outside = visit.effort.net > 0 ? '' : 'outside the effort'
        yield* recordRows(visit.id, visit.records, visit.exposure.collectedBy, outside, identify)
        if (target !== undefined && isReportedEmpty(visit, target)) yield* absenceRows(visit, target)
      }
      yield* recordRows(trap.id, trap.strays, undefined, 'no exposure of this trap accounts for it', identify)
    }
    for (const pool of site.pools) {
      const by = pool.visits[0]?.exposure.collectedBy
      yield* recordRows(pool.id, pool.records, by, '', identify)
    }
    yield* recordRows(site.id, site.strays, undefined, 'no exposure of this site accounts for it', identify)
  }
  yield* withheldRows(events, dataset, identify)
}

/** What hangs on the name and the doubt of a record alone. */
interface Told {
  readonly name: Identification
  /** Its part of the id of an occurrence. */
  readonly key: string
}

type Identify = (record: CatchRecord) => Told

/** A season has few names: each is worked out once. */
function identifier({privacy: {names}}: SeasonEvents): Identify {
  const known = new Map<string, Map<string, Told>>()
  return ({taxon, qualifier}) => {
    let ofName = known.get(taxon)
    if (ofName === undefined) {
      ofName = new Map()
      known.set(taxon, ofName)
    }
    let found = ofName.get(qualifier ?? '')
    if (found === undefined) {
      const doubt = qualifier === undefined ? '' : `:${dashed(qualifier)}`
      found = {name: identificationOf(names.of(taxon), taxon, qualifier), key: dashed(taxon) + doubt}
      ofName.set(qualifier ?? '', found)
    }
    return found
  }
}

function* recordRows(
  event: string,
  records: readonly CatchRecord[],
  recordedBy: string | undefined,
  standing: string,
  identify: Identify
): Iterable<OccurrenceRow> {
  // The id comes from what is recorded, not from its line, so that sorting a table renumbers nothing.
  const used = new Map<string, number>()
  for (const record of records) {
    const told = identify(record)
    const key = keyOf(told, record)
    const times = (used.get(key) ?? 0) + 1
    used.set(key, times)
    yield {
      event,
      id: `${event}:${key}${times === 1 ? '' : `:${times}`}`,
      name: told.name,
      record,
      count: record.count,
      recordedBy,
      remarks: remarksOf(record, standing)
    }
  }
}

function keyOf({key: start}: Told, {sex, lifeStage, vial}: CatchRecord): string {
  let key = start
  if (sex !== undefined) key += `:${sex}`
  if (lifeStage !== 'adult') key += `:${dashed(lifeStage)}`
  return vial === undefined ? key : `${key}:${dashed(vial)}`
}

function dashed(text: string): string {
  return text.includes(' ') ? text.replaceAll(' ', '-') : text
}

function remarksOf({sampleFraction, remarks}: CatchRecord, standing: string): string | undefined {
  if (sampleFraction === 1 && standing === '') return remarks
  const part = sampleFraction === 1 ? '' : `counted in ${Number(sampleFraction.toFixed(4))} of the sample`
  return [standing, part, remarks ?? ''].filter((said) => said !== '').join('; ')
}

function* absenceRows(visit: VisitEvent, target: Target): Iterable<OccurrenceRow> {
  for (const group of target.groups) {
    yield {
      event: visit.id,
      id: `${visit.id}:none:${group.replaceAll(' ', '-')}`,
      name: {scientificName: group, ...target.rankOf(group)},
      record: undefined,
      count: 0,
      recordedBy: visit.exposure.collectedBy,
      remarks: 'the trap stood ready and caught nothing of this group'
    }
  }
}

/** Kinds that are not shown with a place: summed over the season, without site, trap, day or people. */
function* withheldRows(
  {id, withheld}: SeasonEvents,
  {contact}: Dataset,
  identify: Identify
): Iterable<OccurrenceRow> {
  const sums = new Map<string, {record: CatchRecord; count: number}>()
  for (const record of withheld) {
    const {row, taxon, count, qualifier, sex, lifeStage, sampleFraction} = record
    const bare: CatchRecord = {
      row,
      taxon,
      count,
      lifeStage,
      sampleFraction,
      ...(qualifier !== undefined && {qualifier}),
      ...(sex !== undefined && {sex})
    }
    const key = keyOf(identify(bare), bare)
    const sum = sums.get(key)
    if (sum === undefined) sums.set(key, {record: bare, count})
    else sum.count += count
  }
  for (const [key, {record, count}] of [...sums].sort(([a], [b]) => (a < b ? -1 : 1))) {
    yield {
      event: id,
      id: `${id}:${key}`,
      name: identify(record).name,
      record,
      count,
      recordedBy: undefined,
      remarks: undefined,
      withheld: `site, trap and day of a sensitive kind${contact === undefined ? '' : `; ask ${contact}`}`
    }
  }
}
