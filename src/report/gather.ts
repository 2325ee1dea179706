import type {Chart, Figure} from '../charts/chart.ts'
import type {Results} from '../model/results.ts'
import type {ReportTable, TableDefinition, TableSource} from './table.ts'

/** Every figure that the charts make of these results, by name. */
export function gatherFigures(charts: readonly Chart[], results: Results): ReadonlyMap<string, Figure> {
  return named(charts.flatMap((chart) => chart.figures(results)))
}

/** Every table that can be made of these results and findings, by name. */
export function gatherTables(
  definitions: readonly TableDefinition[],
  source: TableSource
): ReadonlyMap<string, ReportTable> {
  return named(definitions.flatMap((definition) => definition.tables(source)))
}

function named<Thing extends {readonly name: string}>(things: readonly Thing[]): ReadonlyMap<string, Thing> {
  return new Map(things.map((thing) => [thing.name, thing]))
}
