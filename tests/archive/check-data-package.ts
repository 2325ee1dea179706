import {createHash} from 'node:crypto'
import iconv from 'iconv-lite'
import Papa from 'papaparse'

interface FieldDescription {
  readonly name: string
  readonly type: string
  readonly decimalChar?: string
  readonly missingValues?: readonly string[]
  readonly constraints?: {
    readonly required?: boolean
    readonly unique?: boolean
    readonly minimum?: number
    readonly maximum?: number
    readonly exclusiveMinimum?: number
    readonly enum?: readonly string[]
  }
}

export interface Resource {
  readonly name: string
  readonly path: string
  readonly encoding: string
  readonly bytes: number
  readonly hash: string
  readonly dialect: {
    readonly delimiter: string
    readonly lineTerminator: string
    readonly headerRows?: readonly number[]
  }
  readonly schema: {
    readonly fields: readonly FieldDescription[]
    readonly missingValues: readonly string[]
    readonly primaryKey?: readonly string[]
    readonly foreignKeys?: readonly {
      readonly fields: readonly string[]
      readonly reference: {readonly resource?: string; readonly fields: readonly string[]}
    }[]
  }
}

/**
 * Whether the files of a Data Package are what its descriptor says, cell by cell: a second reading of the Table Schema
 * 2.0 specification that shares nothing with the writer.
 */
export function checkDataPackage(
  resources: readonly Resource[],
  files: ReadonlyMap<string, Uint8Array>
): readonly string[] {
  const errors: string[] = []
  const columns = new Map<string, ReadonlyMap<string, readonly (string | null)[]>>()
  if (new Set(resources.map(({name}) => name)).size !== resources.length)
    errors.push('two resources have one name')
  for (const resource of resources) {
    const {name, path, schema, dialect} = resource
    const content = files.get(path)
    if (content === undefined) {
      errors.push(`${name}: ${path} is not there`)
      continue
    }
    if (content.length !== resource.bytes) errors.push(`${name}: ${content.length} bytes`)
    if (`sha256:${createHash('sha256').update(content).digest('hex')}` !== resource.hash)
      errors.push(`${name}: another hash`)
    const text = iconv.decode(Buffer.from(content), resource.encoding)
    if (text.includes('\n') && text.indexOf('\r\n') >= 0 !== (dialect.lineTerminator === '\r\n'))
      errors.push(`${name}: lines end otherwise`)
    const {data} = Papa.parse<string[]>(text, {
      delimiter: dialect.delimiter,
      newline: dialect.lineTerminator as '\n'
    })
    const headerRow = dialect.headerRows?.[0] ?? 1
    const header = data[headerRow - 1] ?? []
    const rows = data.slice(headerRow).filter((cells) => !(cells.length === 1 && cells[0] === ''))
    if (header.length !== schema.fields.length)
      errors.push(`${name}: ${header.length} columns, ${schema.fields.length} fields`)
    const values = new Map<string, (string | null)[]>()
    for (const [index, field] of schema.fields.entries()) {
      if (header[index] !== '' && header[index] !== field.name)
        errors.push(`${name}: column ${index} is ${header[index]}, field ${field.name}`)
      const missing = new Set(field.missingValues ?? schema.missingValues)
      const cells = rows.map((row) => (missing.has(row[index] ?? '') ? null : row[index]!))
      values.set(field.name, cells)
      errors.push(...fieldErrors(field, cells).map((error) => `${name}.${field.name}: ${error}`))
    }
    columns.set(name, values)
  }
  for (const {name, schema} of resources) {
    const mine = columns.get(name)
    if (mine === undefined) continue
    const key = (cells: ReadonlyMap<string, readonly (string | null)[]>, fields: readonly string[]) =>
      (cells.get(fields[0]!) ?? []).map((_, row) => fields.map((field) => cells.get(field)?.[row] ?? null))
    if (schema.primaryKey !== undefined) {
      const keys = key(mine, schema.primaryKey).map((cells) => cells.join('\u0000'))
      if (new Set(keys).size !== keys.length) errors.push(`${name}: its primary key stands twice`)
    }
    for (const {fields, reference} of schema.foreignKeys ?? []) {
      const theirs = columns.get(reference.resource ?? name)
      if (theirs === undefined) errors.push(`${name}: no resource ${reference.resource}`)
      const known = new Set(key(theirs ?? new Map(), reference.fields).map((cells) => cells.join('\u0000')))
      for (const cells of key(mine, fields)) {
        if (cells.includes(null) || known.has(cells.join('\u0000'))) continue
        errors.push(`${name}: ${fields.join()} ${cells.join()} is nowhere`)
        break
      }
    }
  }
  return errors
}

function fieldErrors(
  {type, decimalChar = '.', constraints = {}}: FieldDescription,
  cells: readonly (string | null)[]
): readonly string[] {
  const errors: string[] = []
  const filled = cells.filter((cell) => cell !== null)
  const number = (cell: string): number => Number(decimalChar === '.' ? cell : cell.replace(decimalChar, '.'))
  const fits: Readonly<Record<string, (cell: string) => boolean>> = {
    string: () => true,
    integer: (cell) => /^[+-]?\d+$/.test(cell),
    number: (cell) => Number.isFinite(number(cell)) && cell.trim() === cell,
    boolean: (cell) => cell === 'true' || cell === 'false',
    date: (cell) =>
      /^\d{4}-\d\d-\d\d$/.test(cell) && new Date(`${cell}T00:00:00Z`).toISOString().startsWith(cell),
    datetime: (cell) => /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(Z|[+-]\d\d:\d\d)?$/.test(cell)
  }
  const wrong = filled.find((cell) => !fits[type]!(cell))
  if (wrong !== undefined) errors.push(`${wrong} is no ${type}`)
  if (constraints.required && filled.length < cells.length) errors.push('a required cell is empty')
  if (constraints.unique && new Set(filled).size < filled.length) errors.push('a cell stands twice')
  if (constraints.enum !== undefined && filled.some((cell) => !constraints.enum!.includes(cell)))
    errors.push('a word is not in its list')
  for (const cell of filled) {
    const value = number(cell)
    if (constraints.minimum !== undefined && value < constraints.minimum) errors.push(`${cell} is too small`)
    if (constraints.maximum !== undefined && value > constraints.maximum) errors.push(`${cell} is too large`)
    if (constraints.exclusiveMinimum !== undefined && value <= constraints.exclusiveMinimum)
      errors.push(`${cell} is too small`)
  }
  return errors
}
