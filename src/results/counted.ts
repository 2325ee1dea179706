import type {Measure, MeasureKind, Quantity} from '../model/quantity.ts'

type UnitWords = readonly [one: string, many: string]

/** Words for what is counted, singular and plural. */
export const words = {
  individuals: ['individual', 'individuals'],
  names: ['name', 'names'],
  species: ['species', 'species'],
  effective: ['effective species', 'effective species'],
  sites: ['site', 'sites'],
  traps: ['trap', 'traps'],
  habitats: ['habitat', 'habitats'],
  rounds: ['round', 'rounds'],
  exposures: ['exposure', 'exposures'],
  nights: ['night', 'nights'],
  days: ['day', 'days'],
  trapNights: ['trap-night', 'trap-nights'],
  rows: ['row', 'rows'],
  records: ['record', 'records'],
  findings: ['finding', 'findings'],
  taxa: ['kind', 'kinds'],
  units: ['sampling unit', 'sampling units'],
  occurrences: ['occurrence', 'occurrences'],
  blocks: ['block', 'blocks'],
  arrangements: ['arrangement', 'arrangements'],
  starts: ['start', 'starts'],
  seasons: ['season', 'seasons'],
  degreesOfFreedom: ['degree of freedom', 'degrees of freedom'],
  vertebrates: ['vertebrate', 'vertebrates'],
  perHundred: ['individual per 100 trap-nights', 'individuals per 100 trap-nights'],
  perMetreOfRim: [
    'individual per metre of rim and 100 trap-nights',
    'individuals per metre of rim and 100 trap-nights'
  ]
} as const satisfies Readonly<Record<string, UnitWords>>

/** A number of whole things. */
export function counted(label: string, value: number, unit: UnitWords): Measure {
  return {label, kind: 'count', unit, value}
}

/** An effort in trap-nights. */
export function trapNights(label: string, value: number): Measure {
  return {label, kind: 'nights', unit: words.trapNights, value}
}

/** Part of a whole, 0 to 1; not defined where the whole is nothing. */
export function share(label: string, part: number, whole: number, whyNothing: string): Measure {
  return whole === 0
    ? {label, kind: 'share', notDefined: whyNothing}
    : {label, kind: 'share', value: part / whole}
}

/** A quantity with all that is needed to print it. */
export function measured(label: string, kind: MeasureKind, quantity: Quantity, unit?: UnitWords): Measure {
  return {label, kind, ...(unit && {unit}), ...quantity}
}
