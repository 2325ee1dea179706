import type {Column, TableDescription} from '../model/column.ts'
import {nearestName} from '../model/nearest-name.ts'
import type {Settings} from '../model/settings.ts'
import {headerKey} from './header-key.ts'

/** How the text of one column is found in a record. */
export type CellSource =
  | {readonly kind: 'cell'; readonly index: number}
  | {readonly kind: 'join'; readonly indexes: readonly number[]; readonly between: string}
  | {readonly kind: 'first'; readonly indexes: readonly number[]}
  | {readonly kind: 'constant'; readonly text: string}

export interface ResolvedColumn {
  readonly column: Column
  readonly source: CellSource
  /** Header cell that findings point at. */
  readonly index: number
}

export interface Resolution {
  readonly resolved: readonly ResolvedColumn[]
  readonly missing: readonly MissingColumn[]
  readonly unknown: readonly {readonly index: number; readonly hint?: string}[]
  readonly duplicated: readonly {readonly index: number; readonly first: number}[]
}

export interface MissingColumn {
  readonly column: string
  /** A header that may be meant. */
  readonly hint?: string
  /** Headers that study.yaml names for it, of which there is none. */
  readonly named?: readonly string[]
}

export type ColumnMap = NonNullable<NonNullable<Settings['columns']>['sites']>

/** Match a header line to the columns of a table: by the study's own map first, then by name. */
export function resolveColumns(
  table: TableDescription,
  header: readonly string[],
  map: ColumnMap = {}
): Resolution {
  const byKey = new Map<string, number>()
  const duplicated: {index: number; first: number}[] = []
  for (const [index, cell] of header.entries()) {
    const key = headerKey(cell)
    if (key === '') continue
    const first = byKey.get(key)
    if (first === undefined) byKey.set(key, index)
    else duplicated.push({index, first})
  }
  const find = (name: string): number | undefined => byKey.get(headerKey(name))
  const used = new Set<number>()
  const resolved: ResolvedColumn[] = []
  const missing: MissingColumn[] = []
  for (const column of table.columns) {
    const source = sourceOf(column.name, map[column.name], find)
    if (source === undefined) {
      const named = namedHeaders(map[column.name]).filter((name) => find(name) === undefined)
      if (column.required)
        missing.push({
          column: column.name,
          ...hintFor(column, header, named),
          ...(named.length > 0 && {named})
        })
      continue
    }
    const indexes = indexesOf(source)
    for (const index of indexes) used.add(index)
    resolved.push({column, source, index: indexes[0] ?? 0})
  }
  const names = table.columns.map(({name}) => name)
  const unknown = [...header.keys()]
    .filter(
      (index) =>
        headerKey(header[index] ?? '') !== '' &&
        !used.has(index) &&
        !duplicated.some((pair) => pair.index === index)
    )
    .map((index) => {
      const written = header[index] ?? ''
      const isMissing = ({name}: Column): boolean => resolved.every(({column}) => column.name !== name)
      const hint =
        nearestName(written, names) ??
        table.columns.find((column) => isMissing(column) && isOtherHead(column, written))?.name
      return hint === undefined ? {index} : {index, hint}
    })
  return {
    resolved,
    missing: missing.filter(({column}) => !isPooled(table, resolved, column)),
    unknown,
    duplicated
  }
}

/** A catch that was pooled in the field names its site and round instead of a trap and a day. */
function isPooled(table: TableDescription, resolved: readonly ResolvedColumn[], missing: string): boolean {
  const has = (name: string): boolean => resolved.some(({column}) => column.name === name)
  return (
    table.name === 'catch' &&
    (missing === 'trap_id' || missing === 'collected') &&
    has('site_id') &&
    has('round')
  )
}

function sourceOf(
  name: string,
  mapped: ColumnMap[string] | undefined,
  find: (name: string) => number | undefined
): CellSource | undefined {
  if (mapped === undefined) return cellSource(find(name))
  if (typeof mapped === 'string') return cellSource(find(mapped))
  if ('value' in mapped) return {kind: 'constant', text: String(mapped.value)}
  const headers = 'join' in mapped ? mapped.join : mapped.first_of
  const indexes = headers.map(find)
  if (indexes.some((index) => index === undefined)) return undefined
  const found = indexes.filter((index) => index !== undefined)
  return 'join' in mapped
    ? {kind: 'join', indexes: found, between: mapped.with ?? '-'}
    : {kind: 'first', indexes: found}
}

function cellSource(index: number | undefined): CellSource | undefined {
  return index === undefined ? undefined : {kind: 'cell', index}
}

function indexesOf(source: CellSource): readonly number[] {
  if (source.kind === 'constant') return []
  return source.kind === 'cell' ? [source.index] : source.indexes
}

/** The headers that a mapping of study.yaml names. */
export function namedHeaders(mapped: ColumnMap[string] | undefined): readonly string[] {
  if (mapped === undefined) return []
  if (typeof mapped === 'string') return [mapped]
  if ('join' in mapped) return mapped.join
  return 'first_of' in mapped ? mapped.first_of : []
}

function hintFor(column: Column, header: readonly string[], named: readonly string[]): {hint?: string} {
  const hint =
    [column.name, ...named].map((name) => nearestName(name, header)).find((name) => name !== undefined) ??
    header.find((cell) => isOtherHead(column, cell))
  return hint === undefined ? {} : {hint}
}

/** Whether people head such a column so, or so with a unit or remark in brackets: asked, never taken for granted. */
function isOtherHead({name, otherHeads = []}: Column, header: string): boolean {
  const bare = headerKey(header.replace(/[([].*$/s, ''))
  if (bare === headerKey(name)) return true
  const whole = headerKey(header)
  return otherHeads.map(headerKey).some((other) => other === whole || other === bare)
}

/** The text of a column in one record, trimmed. */
export function cellText(source: CellSource, cells: readonly string[]): string {
  switch (source.kind) {
    case 'cell':
      return (cells[source.index] ?? '').trim()
    case 'constant':
      return source.text
    case 'join': {
      const parts = source.indexes.map((index) => (cells[index] ?? '').trim())
      return parts.includes('') ? '' : parts.join(source.between)
    }
    case 'first':
      for (const index of source.indexes) {
        const text = (cells[index] ?? '').trim()
        if (text !== '') return text
      }
      return ''
  }
}
