import type {Settings} from '../../model/settings.ts'
import type {Dataset} from '../dataset.ts'
import {element, paragraph, type Xml} from '../xml.ts'

/** How it was done, in the words of study.yaml. */
export function methods(settings: Settings, {begins, ends, place}: Dataset): Xml {
  const {
    site_selection: selection,
    layout,
    identification,
    sorting,
    vouchers,
    permits,
    limitations
  } = settings
  const steps = [trapWords(settings), identificationWords(identification, sorting), vouchers, permits].filter(
    (step) => step !== undefined
  )
  const extent = [place, begins !== undefined && ends !== undefined ? `${begins} to ${ends}` : undefined]
  const design = [selection, layout?.geometry, spacingWords(layout), intervalWords(settings)]
  const said = (parts: readonly (string | undefined)[]): Xml => {
    const words = parts.filter((part) => part !== undefined)
    return paragraph(words.length === 0 ? 'not recorded' : sentences(words))
  }
  return element(
    'methods',
    {},
    (steps.length === 0 ? ['Pitfall traps; nothing more is recorded.'] : steps).map((step) =>
      element('methodStep', {}, element('description', {}, paragraph(sentences([step]))))
    ),
    element(
      'sampling',
      {},
      element('studyExtent', {}, element('description', {}, said(extent))),
      element('samplingDescription', {}, said(design))
    ),
    element(
      'qualityControl',
      {},
      element(
        'description',
        {},
        paragraph(
          sentences([
            'Dates, states of traps, counts and names were checked by rule; what was found is in findings.json of the archive, and rows that could not be used are set aside from every number',
            limitations
          ])
        )
      )
    )
  )
}

function trapWords({trap_types: types = {}, fluids = {}}: Settings): string | undefined {
  const traps = Object.values(types).map(
    ({container, rim_diameter_mm: rim, depth_mm: depth, material, cover}) =>
      [
        container ?? 'pitfall trap',
        rim === undefined ? undefined : `rim ${rim} mm wide`,
        depth === undefined ? undefined : `${depth} mm deep`,
        material,
        typeof cover === 'string' ? `cover: ${cover}` : undefined
      ]
        .filter((part) => part !== undefined)
        .join(', ')
  )
  const fills = Object.values(fluids).map(({substance, dilution, volume_ml: volume}) =>
    [substance ?? 'fluid', dilution, volume === undefined ? undefined : `${volume} ml`]
      .filter((part) => part !== undefined)
      .join(' ')
  )
  const parts = [
    traps.length === 0 ? undefined : `Traps: ${traps.join('; ')}`,
    fills.length === 0 ? undefined : `Fluid: ${fills.join('; ')}`
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? undefined : parts.join('. ')
}

function identificationWords(
  identification: Settings['identification'],
  sorting: Settings['sorting']
): string | undefined {
  const {level, keys, nomenclature, verifier} = identification ?? {}
  const parts = [
    sorting?.groups_done === undefined ? undefined : `Groups sorted: ${sorting.groups_done.join(', ')}`,
    level === undefined ? undefined : `Identified: ${level}`,
    keys === undefined ? undefined : `Keys: ${keys.join('; ')}`,
    nomenclature === undefined ? undefined : `Nomenclature: ${nomenclature}`,
    verifier === undefined ? undefined : `Checked by ${verifier}`
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? undefined : sentences(parts)
}

function spacingWords(layout: Settings['layout']): string | undefined {
  const {traps_per_site: traps, spacing_m: spacing} = layout ?? {}
  const parts = [
    traps === undefined ? undefined : `${traps} traps a site`,
    spacing === undefined ? undefined : `${spacing} m from trap to trap`
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? undefined : parts.join(', ')
}

function intervalWords({protocol}: Settings): string | undefined {
  const {rounds, interval_nights: nights} = protocol ?? {}
  const parts = [
    rounds === undefined ? undefined : `${rounds} rounds planned`,
    nights === undefined ? undefined : `${nights} nights each`
  ].filter((part) => part !== undefined)
  return parts.length === 0 ? undefined : parts.join(', ')
}

/** Parts as sentences behind each other, each with one full stop. */
function sentences(parts: readonly (string | undefined)[]): string {
  return parts
    .filter((part) => part !== undefined)
    .map((part) => part.replace(/\s+/g, ' ').trim())
    .map((part) => (/[.!?]$/.test(part) ? part : `${part}.`))
    .join(' ')
}
