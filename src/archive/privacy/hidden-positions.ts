import type {StudySource} from '../../model/source.ts'
import type {Study} from '../../model/study.ts'
import type {Reading} from '../reading.ts'
import {headerTest} from '../table-header.ts'
import type {Columns} from './cell-edits.ts'
import {positionEdit} from './position-edit.ts'
import type {PublishedPlace} from './published-place.ts'
import type {StudyPrivacy} from './study-privacy.ts'

/** Rows of one file whose positions are finer than may be shown. */
export interface HiddenPositions {
  readonly file: string
  readonly rows: number
}

/** A position that must stand nowhere in an archive. */
export interface SecretPoint {
  readonly id: string
  readonly latitude: string
  readonly longitude: string
  /** Decimals of a degree that others may see. */
  readonly shownDecimals: number
}

/** More than any study has sites and traps; beyond it rows of one place repeat. */
const mostSecrets = 20_000

/** What the files of sites and traps say of positions beyond what others may see. */
export async function hiddenPositions(
  source: StudySource,
  study: Study,
  privacy: StudyPrivacy,
  reading: Reading
): Promise<{readonly files: readonly HiddenPositions[]; readonly points: readonly SecretPoint[]}> {
  const files: HiddenPositions[] = []
  const points = new Map<string, SecretPoint>()
  for (const name of ['sites', 'traps'] as const) {
    const table = study.tables[name]
    if (table === undefined) continue
    const isHeader = headerTest(table)
    let columns: Columns | undefined
    let edit: (cells: string[]) => boolean = () => false
    let rows = 0
    for await (const {records} of reading.records(source, table.file, table.encoding, table.delimiter)) {
      for (const record of records) {
        if (columns === undefined) {
          if (!isHeader(record)) continue
          columns = reading.columns(name, record, study.settings)
          edit = positionEdit(name, columns, study.settings, privacy)
          continue
        }
        if (!edit([...record])) continue
        rows += 1
        const [latitude, longitude] = [columns.get('latitude'), columns.get('longitude')].map(
          (column) => column?.text(record) ?? ''
        )
        const id = columns.get(name === 'sites' ? 'site_id' : 'trap_id')?.text(record) ?? ''
        if (points.size < mostSecrets)
          points.set(`${latitude} ${longitude}`, {
            id,
            latitude: latitude!,
            longitude: longitude!,
            shownDecimals: shownDecimals(name === 'sites' ? privacy.placeOfSite(id) : privacy.placeOfTrap(id))
          })
      }
    }
    if (rows > 0) files.push({file: table.file, rows})
  }
  return {files, points: [...points.values()]}
}

function shownDecimals(place: PublishedPlace | undefined): number {
  return place?.precision?.split('.')[1]?.length ?? 0
}
