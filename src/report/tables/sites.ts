import type {Measure} from '../../model/quantity.ts'
import type {SiteResult} from '../../model/results.ts'
import type {Cell, TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {noteColumn, numberColumn, wordColumn} from './column.ts'

/** Only `position` is read: it alone knows what others may see. Locality and owner would give a hidden place away. */
export const sites: TableDefinition = {
  name: 'sites',
  summary: 'The sites: habitat, position as far as it may be shown, and habitat structure as recorded.',
  tables: ({results}) => {
    const structure = [
      ...new Map(
        results.sites.flatMap((site) =>
          site.structure.map((measure) => [measure.label, unitOf(measure)] as const)
        )
      )
    ]
    const soil = results.sites.some((site) => site.soil !== undefined)
    return [
      {
        name: 'sites',
        columns: [
          wordColumn('Site'),
          wordColumn('Habitat'),
          wordColumn('Position, north and east'),
          noteColumn('Position'),
          numberColumn('Traps'),
          numberColumn('Rounds'),
          ...structure.map(([label, unit]) => numberColumn(capital(label), unit)),
          ...(soil ? [wordColumn('Soil')] : [])
        ],
        rows: results.sites.map((site) => [
          cell.text(site.name),
          cell.text(site.habitatLabel),
          ...positionCells(site.position),
          cell.measure(site.traps),
          cell.measure(site.rounds),
          ...structure.map(([wanted]) => cell.measure(site.structure.find(({label}) => label === wanted))),
          ...(soil ? [cell.text(site.soil)] : [])
        ]),
        empty: 'No site is on record.'
      }
    ]
  }
}

function positionCells({shown, latitude, longitude, precision}: SiteResult['position']): readonly Cell[] {
  const known = latitude !== undefined && longitude !== undefined
  return [
    known ? cell.text(`${latitude}, ${longitude}`) : cell.blank,
    cell.text(shown === 'rounded' && precision !== undefined ? `rounded to ${precision} degrees` : shown)
  ]
}

function unitOf({kind, unit}: Measure): string | undefined {
  return kind === 'metres' ? 'm' : kind === 'kilometres' ? 'km' : unit?.[1]
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
