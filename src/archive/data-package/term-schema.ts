import {type Term, termIri, termName} from '../darwin-core/terms.ts'
import {type Field, type FieldType, type TableSchema, tableSchemaProfile} from './table-schema.ts'

const numbers = new Set([
  'sampleSizeValue',
  'minimumElevationInMeters',
  'maximumElevationInMeters',
  'decimalLatitude',
  'decimalLongitude',
  'coordinateUncertaintyInMeters',
  'coordinatePrecision',
  'eventDurationValue',
  'samplingEffortValue'
])
const integers = new Set(['individualCount', 'organismQuantity', 'siteCount'])

/** Ids of which no two rows have the same. */
const identities: Readonly<Record<string, string>> = {
  'event.csv': 'eventID',
  'occurrence.csv': 'occurrenceID',
  'measurement.csv': 'measurementID',
  'humboldt.csv': 'eventID'
}

/** The schema of a table of the Darwin Core archive. */
export function termSchema(
  file: string,
  columns: readonly {readonly term: Term}[],
  eventResource: string
): TableSchema {
  const identity = identities[file]
  const isCore = file === 'event.csv'
  return {
    $schema: tableSchemaProfile,
    fields: columns.map(({term}): Field => {
      const name = termName(term)
      const required = name === 'eventID' || name === identity
      return {
        name,
        type: typeOf(name),
        description: termIri(term),
        ...(required && {constraints: {required: true, ...(name === identity && {unique: true})}})
      }
    }),
    missingValues: [''],
    ...(identity !== undefined && {primaryKey: [identity]}),
    foreignKeys: [
      isCore
        ? {fields: ['parentEventID'], reference: {fields: ['eventID']}}
        : {fields: ['eventID'], reference: {resource: eventResource, fields: ['eventID']}}
    ]
  }
}

function typeOf(name: string): FieldType {
  if (integers.has(name)) return 'integer'
  if (numbers.has(name)) return 'number'
  return /^(is|has|are)[A-Z]/.test(name) ? 'boolean' : 'string'
}
