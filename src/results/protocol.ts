import {isoDay} from '../model/day.ts'
import {isDefined, type Measure} from '../model/quantity.ts'
import type {ProtocolResult} from '../model/results.ts'
import type {CatchRecord, Site} from '../model/study.ts'
import {median} from '../statistics/median.ts'
import type {Analysis} from './analysis.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, trapNights, words} from './counted.ts'
import {fluidsInUse, trapTypesInUse} from './equipment.ts'
import {creditOf, isFailure, nightsLost} from './exposure-effort.ts'
import {hasUnusedTimes} from './exposure-nights.ts'
import {groupBy} from './group-by.ts'
import {seasonWindow} from './season.ts'
import type {ExposureInUse} from './season-records.ts'

/** How trapping went, as the records show it. */
export function protocolResult(analysis: Analysis): ProtocolResult {
  const {study, area, exposures, basis} = analysis
  const open = exposures.filter(({effort}) => !effort.closed)
  const intervals = open
    .flatMap(({effort: {exposed}}) => (exposed === undefined ? [] : [exposed]))
    .sort(ascending)
  const settling = settlingNights(open).sort(ascending)
  const traps = [...groupBy(area.traps, ({site}) => site).values()].map((own) => own.length).sort(ascending)
  const middle = median(intervals)
  const dugIn = study.traps.flatMap(({installed}) => (installed === undefined ? [] : [installed]))
  const mixedTimes = hasUnusedTimes(study.exposures, basis)
  return {
    effortKnownFor: 'exposures',
    ...seasonWindow(study.exposures),
    intervalShortest: nights('Shortest interval between opening and collection', intervals[0], noInterval),
    intervalMedian: nights(
      'Median interval between opening and collection',
      isDefined(middle) ? middle.value : undefined,
      noInterval
    ),
    intervalLongest: nights('Longest interval between opening and collection', intervals.at(-1), noInterval),
    roundsAchieved: counted(
      'Rounds in which traps stood open',
      new Set(open.map(({round}) => round)).size,
      words.rounds
    ),
    settlingShortest: nights('Shortest time between digging in and opening', settling[0], noSettling),
    settlingLongest: nights('Longest time between digging in and opening', settling.at(-1), noSettling),
    ...(dugIn.length > 0 && {
      firstInstalled: isoDay(Math.min(...dugIn)),
      lastInstalled: isoDay(Math.max(...dugIn))
    }),
    positionUncertainty: positionUncertainty(study.sites),
    // A zero is written down and not identified.
    ...namesOnRecord(study.catch.filter(({count}) => count > 0)),
    trapsPerSiteSmallest: trapsPerSite('Fewest traps at a site', traps[0]),
    trapsPerSiteLargest: trapsPerSite('Most traps at a site', traps.at(-1)),
    nightsFrom: basis,
    mixedTimes,
    trapTypes: trapTypesInUse(analysis),
    fluids: fluidsInUse(analysis),
    conditions: conditionsOf(analysis),
    lostExposures: lostExposures(analysis),
    sampleFractionUsed: study.catch.some(({sampleFraction}) => sampleFraction < 1),
    pooled: analysis.pooled,
    ...(mixedTimes && {
      remarksOnNights:
        'some openings or collections have a clock time and others have none, so all nights are whole days between dates'
    })
  }
}

/** Where every site states one: a position of unknown uncertainty can be anywhere. */
function positionUncertainty(sites: readonly Site[]): Measure {
  const what = {label: 'Largest uncertainty of the position of a site', kind: 'metres'} as const
  const stated = sites.flatMap(({coordinateUncertaintyM: metres}) => (metres === undefined ? [] : [metres]))
  return stated.length === 0 || stated.length < sites.length
    ? {...what, notDefined: 'the uncertainty of the coordinates is not recorded for every site'}
    : {...what, value: Math.max(...stated)}
}

/** Who identified and who checked, as the records of the catch name them, and how many name a voucher. */
function namesOnRecord(records: readonly CatchRecord[]) {
  const of = (what: string, value: number) => counted(what, value, words.records)
  const by = (field: 'identifiedBy' | 'verifiedBy', what: string) =>
    [...groupBy(records, (record) => record[field])]
      .flatMap(([who, own]) => (who === undefined ? [] : [{who, records: of(`${what} ${who}`, own.length)}]))
      .sort((a, b) => codeUnitOrder(a.who, b.who))
  return {
    catchRecords: of('Records of the catch', records.length),
    identifiedBy: by('identifiedBy', 'Records identified by'),
    verifiedBy: by('verifiedBy', 'Records checked by'),
    verifiedRecords: of('Records checked', records.filter(({verifiedBy}) => verifiedBy !== undefined).length),
    voucherRecords: of('Records with a voucher', records.filter(({voucher}) => voucher !== undefined).length)
  }
}

const noInterval = 'no exposure has an opening date'
const noSettling = 'the day of digging in is not recorded'

function ascending(a: number, b: number): number {
  return a - b
}

function nights(label: string, value: number | undefined, whyNot: string): Measure {
  const what = {label, kind: 'nights', unit: words.nights} as const
  return value === undefined ? {...what, notDefined: whyNot} : {...what, value}
}

function trapsPerSite(label: string, value: number | undefined): Measure {
  return value === undefined
    ? {label, kind: 'count', unit: words.traps, notDefined: 'there are no traps'}
    : counted(label, value, words.traps)
}

/** Whole nights from digging in to the first opening of each trap, where both are on record. */
function settlingNights(open: readonly ExposureInUse[]): number[] {
  return [...groupBy(open, ({trap}) => trap)].flatMap(
    ([
      {
        record: {installed}
      },
      own
    ]) => {
      const openings = own.flatMap(({record: {opened}}) => (opened === undefined ? [] : [opened.day]))
      return installed === undefined || openings.length === 0 ? [] : [Math.min(...openings) - installed]
    }
  )
}

function conditionsOf({study: {settings}, exposures}: Analysis): ProtocolResult['conditions'] {
  return [...groupBy(exposures, ({record}) => record.condition)]
    .sort(([a, first], [b, second]) => second.length - first.length || codeUnitOrder(a, b))
    .map(([condition, own]) => {
      const meaning = settings.conditions?.[condition]?.meaning
      const dated = own.some(({record}) => record.failedOn !== undefined)
      const exposed = own.reduce((sum, {effort}) => sum + (effort.exposed ?? 0), 0)
      const net = own.reduce((sum, {effort}) => sum + effort.net, 0)
      return {
        condition,
        ...(meaning !== undefined && {meaning}),
        credit: creditWords(condition, creditOf(condition, settings), dated),
        exposures: counted(`Exposures found ${condition}`, own.length, words.exposures),
        exposed: trapNights(`Trap-nights between opening and collection, found ${condition}`, exposed),
        net: trapNights(`Trap-nights that count, found ${condition}`, net)
      }
    })
}

function lostExposures({exposures}: Analysis): ProtocolResult['lostExposures'] {
  return exposures.flatMap(({record, trap, effort}) => {
    const {opened, collected, condition, sample} = record
    const {exposed, net} = effort
    if (opened === undefined || exposed === undefined || nightsLost(effort) <= 0) return []
    return [
      {
        site: trap.site.id,
        trap: trap.id,
        opened: isoDay(opened.day),
        collected: isoDay(collected.day),
        condition,
        ...(sample !== undefined && {sample}),
        exposed: trapNights('Trap-nights between opening and collection', exposed),
        net: trapNights('Trap-nights that count', net)
      }
    ]
  })
}

/** What a condition earns, in words. */
function creditWords(condition: string, credit: number, dated: boolean): string {
  const untilFailure = dated && credit > 0 ? ', or the nights until the failure where its day is known' : ''
  if (credit === 0) return 'none'
  if (credit === 1) return `all nights${untilFailure}`
  const part = credit === 0.5 ? 'half the nights' : `${credit} of the nights`
  return isFailure(condition, credit)
    ? `${part} where animals were recovered${untilFailure}`
    : `${part}${untilFailure}`
}
