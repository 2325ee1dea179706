import {freeName} from '../../model/free-name.ts'
import type {ColumnProfile} from './column-profile.ts'
import type {TableProfile} from './table-profile.ts'

/** Table Schema of Data Package 2.0, as far as it is used here. */
export interface TableSchema {
  readonly $schema: string
  readonly fields: readonly Field[]
  readonly missingValues: readonly string[]
  readonly primaryKey?: readonly string[]
  readonly foreignKeys?: readonly ForeignKey[]
}

export interface Field {
  readonly name: string
  readonly type: FieldType
  readonly title?: string
  readonly description?: string
  readonly decimalChar?: string
  readonly missingValues?: readonly string[]
  readonly constraints?: Constraints
}

export type FieldType = 'string' | 'integer' | 'number' | 'boolean' | 'date' | 'datetime'

export interface Constraints {
  readonly required?: true
  readonly unique?: true
  readonly minimum?: number
  readonly maximum?: number
  readonly exclusiveMinimum?: number
  readonly enum?: readonly string[]
}

export interface ForeignKey {
  readonly fields: readonly string[]
  readonly reference: {readonly resource?: string; readonly fields: readonly string[]}
}

export const tableSchemaProfile = 'https://datapackage.org/profiles/2.0/tableschema.json'

/** Names of the columns of a header: what is written there, each its own, and a name for those without one. */
export function fieldNames(header: readonly string[]): readonly string[] {
  const taken = new Set<string>()
  return header.map((written, index) => {
    const wanted = written.trim() === '' ? `column_${index + 1}` : written
    const name = freeName(
      wanted,
      (one) => taken.has(one),
      (number) => `${wanted}_${number}`
    )
    taken.add(name)
    return name
  })
}

/** The type that all cells of a column share; text where they share none, or there are none. */
export function inferredType(profile: ColumnProfile): Pick<Field, 'type' | 'decimalChar'> {
  if (profile.isInteger) return {type: 'integer'}
  if (profile.isPointNumber) return {type: 'number'}
  if (profile.isCommaNumber) return {type: 'number', decimalChar: ','}
  if (profile.isDay) return {type: 'date'}
  return {type: profile.isDayTime ? 'datetime' : 'string'}
}

/** The schema of a table of which nothing is known but its cells. */
export function inferredSchema({header, columns}: TableProfile): TableSchema {
  const names = fieldNames(header)
  return {
    $schema: tableSchemaProfile,
    fields: columns.map((profile, index) => ({
      name: names[index]!,
      ...inferredType(profile),
      ...(profile.cells > 0 && profile.empty === 0 && {constraints: {required: true as const}})
    })),
    missingValues: ['']
  }
}
