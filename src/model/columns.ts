import type {TableDescription, TableName} from './column.ts'
import {catchTable} from './tables/catch-table.ts'
import {sitesTable} from './tables/sites-table.ts'
import {taxaTable} from './tables/taxa-table.ts'
import {trapsTable} from './tables/traps-table.ts'
import {visitsTable} from './tables/visits-table.ts'
import {weatherTable} from './tables/weather-table.ts'

/**
 * Every column of every table, once: the reader parses by it, the rules check by it, the data dictionary and the
 * README print it, and the types of the rows are held to it.
 */
const described = {
  sites: sitesTable,
  traps: trapsTable,
  visits: visitsTable,
  catch: catchTable,
  taxa: taxaTable,
  weather: weatherTable
} as const satisfies Readonly<Record<TableName, TableDescription>>

export type Described = typeof described

export const tables: Readonly<Record<TableName, TableDescription>> = described

export const tableNames = Object.keys(tables) as readonly TableName[]
