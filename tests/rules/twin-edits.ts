import Papa from 'papaparse'
import type {TableName} from '../../src/model/column.ts'
import {tables} from '../../src/model/columns.ts'
import {csvText} from '../example-season/csv-text.ts'

/** Files of a study folder; bytes where a test is about bytes. */
export type Files = ReadonlyMap<string, string | Uint8Array>
export type Edit = (files: Files) => Files

type Row = Readonly<Record<string, string>>

/** Some text of a file for another; it must stand there once. */
export function replaced(file: string, from: string, to: string): Edit {
  return (files) => {
    const text = textOf(files, file)
    const pieces = text.split(from)
    if (pieces.length !== 2) throw new Error(`\`${from}\` stands ${pieces.length - 1} times in ${file}`)
    return withFile(files, file, pieces.join(to))
  }
}

export function appended(file: string, line: string): Edit {
  return (files) => withFile(files, file, `${textOf(files, file)}${line}\n`)
}

export function without(file: string): Edit {
  return (files) => new Map([...files].filter(([name]) => name !== file))
}

/** The same column of all rows that fit set to a value; at least one must fit. */
export function cell(table: TableName, fits: Partial<Row>, column: string, value: string): Edit {
  return rows(table, (row) => (isLike(row, fits) ? {...row, [column]: value} : row))
}

/** Rows of a table changed, or dropped where the change gives undefined; at least one must come out otherwise. */
export function rows(table: TableName, change: (row: Row, at: number) => Row | undefined): Edit {
  return (files) => {
    const {file} = tables[table]
    const {data, meta} = parsed(files, file)
    const changed = data.map(change)
    if (changed.every((row, at) => row === data[at])) throw new Error(`the edit of ${file} changes nothing`)
    const kept = changed.filter((row) => row !== undefined)
    const columns = [...new Set([...(meta.fields ?? []), ...kept.flatMap((row) => Object.keys(row))])]
    return withFile(files, file, csvText(columns, kept))
  }
}

/** A table without some of its columns. */
export function withoutColumns(table: TableName, dropped: readonly string[]): Edit {
  return (files) => {
    const {file} = tables[table]
    const {data, meta} = parsed(files, file)
    const columns = (meta.fields ?? []).filter((column) => !dropped.includes(column))
    return withFile(files, file, csvText(columns, data))
  }
}

/** Everything of the traps that fit, or of none but those: traps, visits and catch. */
export function onlyTraps(stays: (trapId: string) => boolean): Edit {
  const keep = (row: Row) => (stays(row.trap_id ?? '') ? row : undefined)
  return both(rows('traps', keep), rows('visits', keep), rows('catch', keep))
}

export function both(...edits: readonly Edit[]): Edit {
  return (files) => edits.reduce((edited, edit) => edit(edited), files)
}

export function asBytes(file: string, bytes: (text: string) => Uint8Array): Edit {
  return (files) => new Map([...files, [file, bytes(textOf(files, file))]])
}

export function withFile(files: Files, file: string, text: string): Files {
  return new Map([...files, [file, text]])
}

export function parsed(files: Files, file: string) {
  return Papa.parse<Row>(textOf(files, file), {
    header: true,
    delimiter: ',',
    newline: '\n',
    skipEmptyLines: true
  })
}

export function isLike(row: Row, fits: Partial<Row>): boolean {
  return Object.entries(fits).every(([column, value]) => row[column] === value)
}

export function textOf(files: Files, file: string): string {
  const text = files.get(file)
  if (typeof text !== 'string') throw new Error(`there is no text ${file}`)
  return text
}
