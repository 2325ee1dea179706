import {nearestName} from '../model/nearest-name.ts'
import {yamlText} from './yaml-text.ts'

/** Files of spreadsheet programs, which have to be saved as text first. */
const workbook = /\.(xlsx?|xlsm|xlsb|ods|numbers)$/i

/** Files that programs leave beside an open document. */
const lockFile = /^(~\$|\.~)/

const readTable = /\.(csv|tsv|tab|txt)$/i

/** What is to be done about a table that is not there, where the folder holds a file that may be meant by it. */
export function nearFileRemedy(
  table: string,
  wanted: string,
  files: Iterable<string>,
  taken: ReadonlySet<string>
): string | undefined {
  const known = [...files].filter((file) => !lockFile.test(nameOf(file)) && !taken.has(file))
  const tables = known.filter((file) => readTable.test(file))
  const workbooks = known.filter((file) => workbook.test(file))
  const text = like(wanted, tables) ?? like(table, tables)
  if (text !== undefined)
    return `is it \`${text}\`? Then ${nameOf(text) === `${table}.csv` ? '' : `rename that file to ${table}.csv, or `}write \`${table}: ${yamlText(text)}\` in study.yaml, below \`files:\` and two spaces in`
  const book =
    like(wanted, workbooks) ?? like(table, workbooks) ?? (workbooks.length === 1 ? workbooks[0] : undefined)
  if (book !== undefined)
    return `\`${book}\` is a workbook, which is not read: open it and save the sheet with this table as CSV, as ${table}.csv in this folder`
  return undefined
}

/** The one file whose name is the wanted one but for folder, case and ending, or for a slip of the pen. */
function like(wanted: string, files: readonly string[]): string | undefined {
  const same = files.filter((file) => stem(file) === stem(wanted))
  if (same.length > 0) return same.length === 1 ? same[0] : undefined
  const near = nearestName(stem(wanted), files.map(stem))
  const meant = files.filter((file) => stem(file) === near)
  return meant.length === 1 ? meant[0] : undefined
}

function nameOf(path: string): string {
  return path.replace(/^.*[/\\]/, '')
}

function stem(path: string): string {
  return nameOf(path)
    .replace(/[\u201c\u201d\u2018\u2019"']/g, '')
    .replace(/(\.[a-z]{2,7})+$/i, '')
    .toLowerCase()
}
