import type {Column, TableName} from '../../model/column.ts'
import {tables} from '../../model/columns.ts'
import type {Settings} from '../../model/settings.ts'
import type {SourceTable} from '../../model/study.ts'
import type {ColumnProfile} from './column-profile.ts'
import type {TableProfile} from './table-profile.ts'
import {
  type Constraints,
  type Field,
  type ForeignKey,
  fieldNames,
  inferredType,
  type TableSchema,
  tableSchemaProfile
} from './table-schema.ts'

/** A file of the study that holds one table or several, and what its cells have in common. */
export interface RawTable {
  readonly file: string
  /** Name of its resource in the package. */
  readonly resource: string
  readonly sources: readonly SourceTable[]
  readonly profile: TableProfile
}

interface Meant {
  readonly table: TableName
  readonly column: Column
}

/** Columns by which the rows of one table name those of another. */
const references: readonly (readonly [from: TableName, column: string, to: TableName, key: string])[] = [
  ['traps', 'site_id', 'sites', 'site_id'],
  ['visits', 'trap_id', 'traps', 'trap_id'],
  ['catch', 'trap_id', 'traps', 'trap_id'],
  ['catch', 'site_id', 'sites', 'site_id'],
  ['catch', 'taxon', 'taxa', 'taxon']
]

const keys: Readonly<Partial<Record<TableName, string>>> = {
  sites: 'site_id',
  traps: 'trap_id',
  taxa: 'taxon',
  weather: 'date'
}

/**
 * The schema of a raw table: what pitfolio takes its columns for, as far as every cell bears it out. A column with a
 * cell that is no number stays text; a key that leads nowhere in one row is left out. So the table is valid by its
 * schema, and findings.json says what is wrong with it.
 */
export function rawSchema(raw: RawTable, all: readonly RawTable[], settings: Settings): TableSchema {
  const {profile, sources} = raw
  const names = fieldNames(profile.header)
  const meant = meanings(sources, settings)
  const [only] = sources.length === 1 ? sources : []
  const key = only === undefined ? undefined : plainColumn(only, keys[only.name] ?? '', settings)
  const isKey =
    key !== undefined && profile.columns[key]?.isUnique === true && profile.columns[key].empty === 0
  const foreignKeys = foreignKeysOf(raw, all, settings, names)
  return {
    $schema: tableSchemaProfile,
    fields: profile.columns.map((column, index) => field(names[index]!, column, meant.get(index), settings)),
    missingValues: [''],
    ...(isKey && {primaryKey: [names[key]!]}),
    ...(foreignKeys.length > 0 && {foreignKeys})
  }
}

/** What each column of the file is taken for, by its place in the header. */
function meanings(sources: readonly SourceTable[], settings: Settings): ReadonlyMap<number, Meant> {
  const meant = new Map<number, Meant>()
  for (const source of sources) {
    for (const column of tables[source.name].columns) {
      const index = plainColumn(source, column.name, settings)
      if (index !== undefined && !meant.has(index)) meant.set(index, {table: source.name, column})
    }
  }
  return meant
}

/** Place of a column that is read as it stands: not joined of several, not the same for all rows. */
function plainColumn({name, columns}: SourceTable, column: string, settings: Settings): number | undefined {
  const mapped = settings.columns?.[name]?.[column]
  return mapped === undefined || typeof mapped === 'string' ? columns.get(column)?.index : undefined
}

function field(name: string, profile: ColumnProfile, meant: Meant | undefined, settings: Settings): Field {
  if (meant === undefined) return {name, ...inferredType(profile), description: 'not used by pitfolio'}
  const {column} = meant
  const unit = column.unit === undefined ? '' : `, in ${column.unit}`
  const blanks = Object.entries(settings.words?.[column.name] ?? {}).flatMap(([code, word]) =>
    `${word}` === '' && code !== '' ? [code] : []
  )
  const constraints = constraintsOf(column, profile)
  return {
    name,
    ...typeOf(column, profile),
    ...(column.name !== name && {title: column.name}),
    description: column.meaning + unit,
    ...(blanks.length > 0 && {missingValues: ['', ...blanks]}),
    ...(Object.keys(constraints).length > 0 && {constraints})
  }
}

function typeOf({kind}: Column, profile: ColumnProfile): Pick<Field, 'type' | 'decimalChar'> {
  const found = inferredType(profile)
  const isBlank = profile.empty === profile.cells
  switch (kind) {
    case 'id':
    case 'text':
    case 'word':
      return {type: 'string'}
    case 'count':
      return {type: isBlank || found.type === 'integer' ? 'integer' : 'string'}
    case 'number':
    case 'fraction':
    case 'latitude':
    case 'longitude':
      if (isBlank || found.type === 'integer') return {type: 'number'}
      return found.type === 'number' ? found : {type: 'string'}
    case 'day':
    case 'moment':
      if (isBlank) return {type: 'date'}
      return found.type === 'date' || found.type === 'datetime' ? found : {type: 'string'}
  }
}

const bounds: Readonly<Partial<Record<Column['kind'], Constraints>>> = {
  count: {minimum: 0},
  latitude: {minimum: -90, maximum: 90},
  longitude: {minimum: -180, maximum: 180},
  fraction: {exclusiveMinimum: 0, maximum: 1}
}

function constraintsOf(column: Column, profile: ColumnProfile): Constraints {
  const {values, least, greatest} = profile
  const bound = typeOf(column, profile).type === 'string' ? undefined : bounds[column.kind]
  const isWithin =
    bound !== undefined &&
    least >= (bound.minimum ?? Number.NEGATIVE_INFINITY) &&
    least > (bound.exclusiveMinimum ?? Number.NEGATIVE_INFINITY) &&
    greatest <= (bound.maximum ?? Number.POSITIVE_INFINITY)
  const words = column.kind === 'word' ? column.words : undefined
  const isWorded =
    words !== undefined && values !== undefined && [...values].every((value) => words.includes(value))
  return {
    ...(column.required && profile.empty === 0 && {required: true}),
    ...(isWithin && bound),
    ...(isWorded && {enum: words})
  }
}

function foreignKeysOf(
  raw: RawTable,
  all: readonly RawTable[],
  settings: Settings,
  names: readonly string[]
): readonly ForeignKey[] {
  const found = (table: TableName, name: string) => {
    const home = all.find(({sources}) => sources.some((source) => source.name === table))
    const source = home?.sources.find((one) => one.name === table)
    const index = source === undefined ? undefined : plainColumn(source, name, settings)
    return home === undefined || index === undefined ? undefined : {home, index}
  }
  return references.flatMap(([from, column, to, key]): ForeignKey[] => {
    const [child, parent] = [found(from, column), found(to, key)]
    // A table that shares its file with its parent names it by standing in the same line.
    if (child === undefined || parent === undefined || child.home !== raw || parent.home === raw) return []
    const [naming, named] = [child, parent].map(({home, index}) => home.profile.columns[index])
    if (naming?.values === undefined || named?.values === undefined || !named.isUnique) return []
    const known = named.values
    if (![...naming.values].every((value) => known.has(value))) return []
    const target = fieldNames(parent.home.profile.header)[parent.index]!
    return [{fields: [names[child.index]!], reference: {resource: parent.home.resource, fields: [target]}}]
  })
}
