import type {TableDescription} from '../model/column.ts'
import type {Settings} from '../model/settings.ts'

/** File of a table within the study folder: `.\\data\\catch.csv` is `data/catch.csv` everywhere. */
export function fileOf(table: TableDescription, settings: Settings): string {
  return (settings.files?.[table.name] ?? table.file).replaceAll('\\', '/').replace(/^(\.\/)+/, '')
}
