import type {TableDescription, TableName} from '../model/column.ts'
import {tables} from '../model/columns.ts'
import {listWords} from '../model/list-words.ts'
import type {Problem} from '../model/study.ts'
import {headerKey} from './header-key.ts'
import type {ColumnMap, Resolution} from './resolve-columns.ts'
import type {Header} from './table-source.ts'
import {mayBeTotal} from './totals.ts'
import {yamlText} from './yaml-text.ts'

/** More headers than these are no help to somebody who looks for one of them. */
const mostHeaders = 12

/** One finding for all columns that a table lacks: one line of study.yaml mends them together. */
export function missingColumns(
  file: string,
  header: Header,
  table: TableDescription,
  resolution: Resolution,
  map: ColumnMap
): Problem {
  const {missing} = resolution
  const list = missing.map(({column}) => `\`${column}\``)
  const named = missing.flatMap(({column, named: names}) =>
    names === undefined
      ? []
      : [`study.yaml says that \`${column}\` is ${listWords(names.map(ticked))}, and no header says so`]
  )
  return {
    code: 'missing-column',
    place: {file, line: header.line},
    message: [
      `${list.length === 1 ? 'column' : 'columns'} ${listWords(list)} ${list.length === 1 ? 'is' : 'are'} missing`,
      ...named
    ].join('; '),
    remedy: isTurned(table, resolution, header)
      ? 'this table has one row for each kind and one column for each trap or site: turn it round (in a spreadsheet copy it and paste it special, transposed), with `trap_id` and `collected` as its first columns; or write one row for each kind of each collection'
      : remedyFor(header, table, resolution, map),
    setsAside: false
  }
}

/** A header that is one only with the line below it; the names of both are given as the one line that they should be. */
export function headerInTwoLines(file: string, {cells, line}: Header, delimiter: string): Problem {
  return {
    code: 'missing-column',
    place: {file, line},
    message: `the header stands in two lines, ${line} and ${line + 1}; it must be one`,
    remedy: `write these names into one line, each above its column, and delete the other: \`${cells.map((cell) => cell.trim()).join(delimiter)}\``,
    setsAside: false
  }
}

function remedyFor(
  header: Header,
  table: TableDescription,
  {missing, unknown, duplicated}: Resolution,
  map: ColumnMap
): string {
  const head = (index: number): string => (header.cells[index] ?? '').trim()
  const headers = [...header.cells.keys()].map(head).filter((cell) => cell !== '')
  if (headers.length === 1)
    return 'this line has one cell only: what separates the cells must be a comma, a semicolon or a tab'
  const asked = missing.flatMap(({column, hint}) => (hint === undefined ? [] : [{column, hint: hint.trim()}]))
  const also = unknown.flatMap(({index, hint}) => {
    const isOwn = hint === undefined || hint === 'site_id' || missing.some(({column}) => column === hint)
    return isOwn ? [] : [{column: hint, hint: head(index)}]
  })
  const left = missing.filter(({hint}) => hint === undefined).map(({column}) => column)
  const shown = `${headers.slice(0, mostHeaders).map(ticked).join(', ')}${headers.length > mostHeaders ? ' ...' : ''}`
  const pairs = asked.length === 0 ? [] : [...asked, ...also]
  const twice = duplicated
    .map(({index}) => `; ${ticked(head(index))} stands twice: rename one of them`)
    .join('')
  if (pairs.length === 0) {
    const line = mappingLine(
      table.name,
      left.map((column) => `${column}: ...`),
      map
    )
    return `rename the header, or ${line}, each with the one that you mean of: ${shown}${twice}`
  }
  const question =
    pairs.length === 1
      ? `is ${ticked(pairs[0]?.hint ?? '')} that column? If so`
      : `are ${listWords(pairs.map(({hint}) => ticked(hint)))} meant? If so`
  const line = mappingLine(
    table.name,
    pairs.map(({column, hint}) => `${column}: ${yamlText(hint)}`),
    map
  )
  const rest = left.length === 0 ? '' : `; add ${listWords(left.map(ticked))} likewise, from ${shown}`
  return `${question}, ${line}${rest}${numberedAnew(pairs, headers)}${twice}`
}

/** Traps that bear the same numbers at every site are told apart by site and number together. */
function numberedAnew(
  pairs: readonly {readonly column: string; readonly hint: string}[],
  headers: readonly string[]
): string {
  const trap = pairs.find(({column}) => column === 'trap_id')?.hint
  const siteHeads = ['site_id', ...(tables.sites.columns[0]?.otherHeads ?? [])].map(headerKey)
  const site = headers.find((head) => siteHeads.includes(headerKey(head)))
  if (trap === undefined || site === undefined) return ''
  return `; where traps are numbered anew at each site, \`trap_id: {join: [${yamlText(site)}, ${yamlText(trap)}]}\``
}

/** The line of study.yaml that tells headers of one's own, and where it belongs: twice `columns:` would be no YAML. */
export function mappingLine(table: TableName, pairs: readonly string[], map: ColumnMap): string {
  return Object.keys(map).length === 0
    ? `write \`${table}: {${pairs.join(', ')}}\` in study.yaml, below \`columns:\` and two spaces in`
    : `add ${listWords(pairs.map(ticked))} to \`${table}:\` below \`columns:\` in study.yaml`
}

/** One row for each kind and one column for each trap: people's reports look so, and no day or trap has a column. */
function isTurned(
  {name}: TableDescription,
  {resolved, missing, unknown}: Resolution,
  header: Header
): boolean {
  if (name !== 'catch') return false
  const names =
    resolved.some(({column}) => column.name === 'taxon') ||
    missing.some(({column, hint}) => column === 'taxon' && hint !== undefined)
  const lacks = (wanted: string): boolean =>
    missing.some(({column, hint}) => column === wanted && (hint === undefined || mayBeTotal(hint.trim())))
  const others = unknown.filter(({index}) => !mayBeTotal((header.cells[index] ?? '').trim()))
  return names && lacks('trap_id') && lacks('collected') && lacks('count') && others.length >= 2
}

function ticked(text: string): string {
  return `\`${text}\``
}
