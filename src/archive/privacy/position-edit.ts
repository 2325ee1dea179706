import type {Settings} from '../../model/settings.ts'
import type {ColumnPlace} from '../reading.ts'
import type {Columns} from './cell-edits.ts'
import type {PublishedPlace} from './published-place.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/**
 * Writes positions as others may see them into the records of sites or traps. It goes by what stands in the file, not
 * by what was made of it: a row that was set aside, or whose coordinates were not usable, still holds them. Tells
 * whether a record says more than others may see; where study.yaml says it for all records, no cell can be changed.
 */
export function positionEdit(
  table: 'sites' | 'traps',
  columns: Columns,
  settings: Settings,
  privacy: StudyPrivacy
): (cells: string[]) => boolean {
  const id = columns.get(table === 'sites' ? 'site_id' : 'trap_id')
  const [latitude, longitude] = [columns.get('latitude'), columns.get('longitude')]
  const paced = ['x_m', 'y_m'].map((column) => columns.get(column))
  const shown = columns.get('coordinates_shown')
  const isExactByDefault = settings.privacy?.coordinates === 'exact'
  return (cells) => {
    const name = id?.text(cells) ?? ''
    const place = table === 'sites' ? privacy.placeOfSite(name) : privacy.placeOfTrap(name)
    if (place === undefined ? isExactByDefault && isExactWord(shown?.text(cells)) : place.mayBeExact)
      return false
    const mark = decimalMark([latitude, longitude], cells, settings)
    const changed = [
      writeDegrees(latitude, cells, place?.latitude, mark),
      writeDegrees(longitude, cells, place?.longitude, mark),
      ...paced.map((column) => takeOutGrid(column, cells))
    ]
    const isFiner = changed.includes(true)
    return (table === 'sites' && editSiteWords(cells, place, columns, isFiner)) || isFiner
  }
}

function isExactWord(word: string | undefined): boolean {
  return word === undefined || word === '' || word === 'exact'
}

/** Whether anything had to be changed: what is no finer than may be shown stays as it is written. */
function writeDegrees(
  column: ColumnPlace | undefined,
  cells: string[],
  published: string | undefined,
  mark: string
): boolean {
  const written = column?.text(cells) ?? ''
  if (column === undefined || written === '') return false
  if (published !== undefined && Number(written.replace(',', '.')) === Number(published)) return false
  write(column, cells, (published ?? '').replace('.', mark))
  return true
}

/** Metres that nobody paces out at a site: beyond them stand the coordinates of a grid of the whole country. */
const farthestPaced = 1000

/** Whether metres from a corner of the site were found to be metres of such a grid, and were taken out. */
function takeOutGrid(column: ColumnPlace | undefined, cells: string[]): boolean {
  const written = column?.text(cells) ?? ''
  if (written === '') return false
  const metres = Number(written.replace(/\s/g, '').replace(',', '.'))
  if (Math.abs(metres) <= farthestPaced) return false
  write(column, cells, '')
  return true
}

function editSiteWords(
  cells: string[],
  place: PublishedPlace | undefined,
  columns: Columns,
  isFiner: boolean
): boolean {
  const locality = columns.get('locality')
  const tells = (place === undefined || place.hidesLocality) && (locality?.text(cells) ?? '') !== ''
  if (tells) write(locality, cells, '')
  const uncertainty = columns.get('coordinate_uncertainty_m')
  if (!isFiner || (uncertainty?.text(cells) ?? '') === '') return tells
  const enlarged =
    place?.uncertaintyM === undefined || place.uncertaintyAssumed ? '' : `${place.uncertaintyM}`
  write(uncertainty, cells, enlarged)
  return tells
}

function write(column: ColumnPlace | undefined, cells: string[], text: string): void {
  const [first, ...others] = column?.indexes ?? []
  if (first === undefined || first >= cells.length) return
  cells[first] = text
  for (const other of others) if (other < cells.length) cells[other] = ''
}

/** The mark that the study reads as decimal in this place: 55.403 is 55 thousand where commas are decimal. */
function decimalMark(
  columns: readonly (ColumnPlace | undefined)[],
  cells: readonly string[],
  {decimal}: Settings
): string {
  if (decimal !== undefined) return decimal === 'comma' ? ',' : '.'
  return columns.some((column) => column?.text(cells).includes(',')) ? ',' : '.'
}
