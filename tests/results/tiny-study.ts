import {dayOf, type Moment} from '../../src/model/day.ts'
import {isDefined, type Measure} from '../../src/model/quantity.ts'
import {type Results, resultsSchema} from '../../src/model/results.ts'
import type {Settings} from '../../src/model/settings.ts'
import type {CatchRecord, Exposure, Site, Study, Taxon, Trap, UsableStudy} from '../../src/model/study.ts'
import {computeResults} from '../../src/results/index.ts'
import {type Runner, replicatesOf} from '../../src/results/replicates.ts'

type Row<Record> = Partial<Omit<Record, 'row'>>

/** A study in a few lines: ids and days as text, everything else as the typed rows have it. */
export interface Tiny {
  readonly settings?: Settings
  /** Site to habitat. */
  readonly sites?: Readonly<Record<string, string | ({readonly habitat: string} & Row<Site>)>>
  /** Trap to site. */
  readonly traps?: Readonly<Record<string, string | ({readonly siteId: string} & Row<Trap>)>>
  /** Trap, opened ('' where nobody wrote it down), collected. */
  readonly visits?: readonly (readonly [
    trap: string,
    opened: string,
    collected: string,
    rest?: Row<Exposure>
  ])[]
  /** Trap ('' where pooled), collected, taxon, count. */
  readonly catch?: readonly (readonly [
    trap: string,
    collected: string,
    taxon: string,
    count: number,
    rest?: Row<CatchRecord>
  ])[]
  readonly taxa?: Readonly<Record<string, Row<Taxon>>>
}

export function tinyStudy(tiny: Tiny): UsableStudy {
  const study: Study = {
    settings: tiny.settings ?? {},
    settingPlace: (path) => ({file: 'study.yaml', line: path.length, column: 1}),
    sites: Object.entries(tiny.sites ?? {}).map(([siteId, said], row) => {
      return {row, siteId, ...(typeof said === 'string' ? {habitat: said} : said)}
    }),
    traps: Object.entries(tiny.traps ?? {}).map(([trapId, said], row) => {
      return {row, trapId, ...(typeof said === 'string' ? {siteId: said} : said)}
    }),
    exposures: (tiny.visits ?? []).map(([trapId, opened, collected, rest], row) => ({
      row,
      trapId,
      ...(opened !== '' && {opened: moment(opened)}),
      collected: moment(collected),
      condition: 'intact',
      ...rest
    })),
    catch: (tiny.catch ?? []).map(([trapId, collected, taxon, count, rest], row) => ({
      row,
      ...(trapId !== '' && {trapId}),
      ...(collected !== '' && {collected: moment(collected)}),
      taxon,
      count,
      lifeStage: 'adult',
      sampleFraction: 1,
      ...rest
    })),
    taxa: Object.entries(tiny.taxa ?? {}).map(([taxon, said], row) => ({row, taxon, ...said})),
    weather: [],
    tables: {},
    problems: [],
    texts: new Map()
  }
  return {study, findings: [], balance: [], judgedOtherwise: []}
}

/** The results of a tiny study, checked against the description of results.json. */
export function tinyResults(tiny: Tiny): Results {
  return checkedResults(tinyStudy(tiny))
}

export function checkedResults(usable: UsableStudy): Results {
  const results = computeResults(usable, fewReplicates)
  resultsSchema.parse(results)
  return results
}

/** Enough for every interval to be there. */
export const fewReplicates: Runner = (task) => replicatesOf(task, 0, Math.min(task.replicates, 20))

/** The number of a measure, or why there is none. */
export function numberOf(measure: Measure): number | string {
  return isDefined(measure) ? measure.value : measure.notDefined
}

/** `2026-05-04` or `2026-05-04T10:30`. */
export function moment(text: string): Moment {
  const [date = '', time] = text.split('T')
  const [year, month, dayOfMonth] = date.split('-').map(Number)
  const day = dayOf(year!, month!, dayOfMonth!)
  if (day === undefined) throw new RangeError(`${text} is no day`)
  if (time === undefined) return {day}
  const [hours, minutes] = time.split(':').map(Number)
  return {day, minutes: hours! * 60 + minutes!}
}

/** Two sites with two traps each, two rounds, three species: enough for every section to have something to say. */
export const twoPlaces: Tiny = {
  settings: {habitats: {wood: {label: 'beech wood'}, meadow: 'hay meadow'}, target: {groups: ['Carabidae']}},
  sites: {M: 'meadow', W: 'wood'},
  traps: {M1: 'M', M2: 'M', W1: 'W', W2: 'W'},
  visits: ['M1', 'M2', 'W1', 'W2'].flatMap((trap) => [
    [trap, '2026-05-04', '2026-05-18'] as const,
    [trap, '2026-05-18', '2026-06-01'] as const
  ]),
  catch: [
    ['M1', '2026-05-18', 'Poecilus cupreus', 4],
    ['M1', '2026-06-01', 'Poecilus cupreus', 2],
    ['M2', '2026-05-18', 'Abax ater', 1],
    ['M2', '2026-06-01', 'Poecilus cupreus', 1],
    ['W1', '2026-05-18', 'Abax ater', 5, {sex: 'female'}],
    ['W1', '2026-06-01', 'Carabus nemoralis', 2],
    ['W2', '2026-05-18', 'Abax ater', 3, {sex: 'male'}],
    ['W2', '2026-06-01', 'Carabus nemoralis', 1]
  ],
  taxa: {
    'Abax ater': {family: 'Carabidae', order: 'Coleoptera', rank: 'species'},
    'Carabus nemoralis': {family: 'Carabidae', order: 'Coleoptera', rank: 'species'},
    'Poecilus cupreus': {family: 'Carabidae', order: 'Coleoptera', rank: 'species'}
  }
}
