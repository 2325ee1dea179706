import {isoDay} from '../model/day.ts'
import type {Measure} from '../model/quantity.ts'
import type {VertebratesResult} from '../model/results.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, words} from './counted.ts'
import type {Part} from './parts.ts'

const notRecorded = 'vertebrates were not recorded'

/** Vertebrates caught by accident, of all exposures whether they count or not. */
export function vertebratesResult({exposures, where}: Part): VertebratesResult {
  const open = exposures.filter(({effort}) => !effort.closed)
  const unsaid = open.filter(
    ({record}) => record.vertebratesCount === undefined && record.vertebratesWhat === undefined
  )
  const found = exposures.filter(({record}) => {
    return (
      (record.vertebratesCount ?? 0) > 0 ||
      (record.vertebratesCount === undefined && record.vertebratesWhat !== undefined)
    )
  })
  const recorded = exposures.some(({record}) => record.vertebratesCount !== undefined) || found.length > 0
  const count = found.reduce((sum, {record}) => sum + (record.vertebratesCount ?? 0), 0)
  const nights = open.reduce((sum, {effort}) => sum + (effort.exposed ?? 0), 0)
  const caution = unsaid.length > 0 && {
    caution: `not recorded at ${unsaid.length} of ${open.length} exposures`
  }
  const countLabel = `Vertebrates caught, ${where}`
  const rateLabel = `Vertebrates per 1,000 trap-nights of exposure, ${where}`
  const perThousand: Measure = !recorded
    ? {label: rateLabel, kind: 'rate', notDefined: notRecorded}
    : nights === 0
      ? {label: rateLabel, kind: 'rate', notDefined: 'there are no nights of exposure on record'}
      : {label: rateLabel, kind: 'rate', value: (count * 1000) / nights, ...caution}
  return {
    recorded,
    count: recorded
      ? {...counted(countLabel, count, words.vertebrates), ...caution}
      : {label: countLabel, kind: 'count', unit: words.vertebrates, notDefined: notRecorded},
    perThousand,
    notLooked: counted(`Exposures without a word on vertebrates, ${where}`, unsaid.length, words.exposures),
    events: found
      .map(({record, trap}) => ({
        site: trap.site.id,
        trap: trap.id,
        collected: isoDay(record.collected.day),
        count: eventCount(record.vertebratesCount),
        ...(record.vertebratesWhat !== undefined && {what: record.vertebratesWhat}),
        ...(record.vertebratesFate !== undefined && {fate: record.vertebratesFate})
      }))
      .sort((a, b) => codeUnitOrder(a.collected, b.collected) || codeUnitOrder(a.trap, b.trap))
  }
}

function eventCount(count: number | undefined): Measure {
  const label = 'Vertebrates found in the trap'
  return count === undefined
    ? {label, kind: 'count', unit: words.vertebrates, notDefined: 'their number was not written down'}
    : counted(label, count, words.vertebrates)
}
