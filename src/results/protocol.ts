import {isDefined, type Measure} from '../model/quantity.ts'
import type {ProtocolResult} from '../model/results.ts'
import {median} from '../statistics/median.ts'
import type {Analysis} from './analysis.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, trapNights, words} from './counted.ts'
import {fluidsInUse, trapTypesInUse} from './equipment.ts'
import {creditOf, isFailure} from './exposure-effort.ts'
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
    trapsPerSiteSmallest: trapsPerSite('Fewest traps at a site', traps[0]),
    trapsPerSiteLargest: trapsPerSite('Most traps at a site', traps.at(-1)),
    nightsFrom: basis,
    mixedTimes,
    trapTypes: trapTypesInUse(analysis),
    fluids: fluidsInUse(analysis),
    conditions: conditionsOf(analysis),
    sampleFractionUsed: study.catch.some(({sampleFraction}) => sampleFraction < 1),
    pooled: analysis.pooled,
    ...(mixedTimes && {
      remarksOnNights:
        'some openings or collections have a clock time and others have none, so all nights are whole days between dates'
    })
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
