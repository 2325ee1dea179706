import type {FigureData} from '../report/document.ts'
import {csv} from './csv.ts'

/** The numbers behind a figure: figures/<name>.csv. */
export function figureCsv({columns, rows}: FigureData): string {
  return csv(columns, rows)
}
