import {inkTones} from '../model/ink.ts'
import {listWords} from '../model/list-words.ts'
import type {AssemblageResult, ScopeResult} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {habitatColour, habitatFields} from './habitat-symbols.ts'
import {italicNames} from './italic-names.ts'
import {numberWords} from './measure-words.ts'
import {nameColumn, nameColumnWidth} from './name-column.ts'
import {withNotes} from './notes.ts'
import {panelHeading} from './panel-grid.ts'
import {sentenceStart} from './sentence-start.ts'
import {type SpeciesShare, speciesShares} from './species-shares.ts'

/** The commonest species in rows, the habitats in columns: which species make up the catch of each. */
export const composition: Chart = {
  name: 'composition',
  summary: 'Share of the commonest species in the catch of each habitat; one picture for each scope.',
  figures: (results) => results.scopes.map((scope) => figure(scope, italicNames(results.taxa)))
}

const rowHeight = 17
/** Habitats side by side; more stand in blocks one below the other. */
const mostColumns = 5
const roomForColumns = 454
/** Where the bars begin in a column, right of the numbers. */
const barsFrom = 32

function figure(scope: ScopeResult, italics: ReadonlySet<string>): Figure {
  const {habitats} = scope
  const shares = speciesShares(habitats)
  const base = {
    name: `composition-${scope.id}`,
    title: `Share of the commonest species in each habitat: ${scope.label}`,
    alternative: alternative(scope, shares),
    data: {
      columns: ['taxon', 'habitat_id', 'habitat', 'share_of_individuals'],
      rows: shares.flatMap(({taxon, byHabitat}) =>
        byHabitat.map((share, index) => [
          taxon,
          habitats[index]?.id ?? null,
          habitats[index]?.label ?? null,
          share
        ])
      )
    }
  }
  if (habitats.length === 0) return {...base, notDrawn: 'no habitat is on record'}
  const caught = habitats.filter(({ranks}) => ranks.length > 0)
  if (caught.length === 0) return {...base, notDrawn: 'nothing in this scope was caught'}
  const without = habitats.filter(({ranks}) => ranks.length === 0).map(({label}) => label)
  const notes = without.length === 0 ? [] : [`Nothing of this group was caught: ${listWords(without)}.`]
  return {...base, spec: withNotes(specification(habitats, shares, italics), notes, -nameColumnWidth)}
}

function specification(
  habitats: readonly AssemblageResult[],
  shares: readonly SpeciesShare[],
  italics: ReadonlySet<string>
): Record<string, unknown> {
  const columns = habitats
    .map((habitat, index) => ({habitat, index}))
    .filter(({habitat}) => habitat.ranks.length > 0)
  const blocks = Math.ceil(columns.length / mostColumns)
  const perBlock = Math.ceil(columns.length / blocks)
  const columnWidth = Math.floor(roomForColumns / perBlock)
  const largest = Math.max(...shares.flatMap(({byHabitat}) => byHabitat))
  return {
    title: {
      text: '% of individuals',
      fontWeight: 'normal',
      fontSize: 12,
      color: inkTones.muted.light,
      anchor: 'start',
      offset: 14
    },
    vconcat: Array.from({length: blocks}, (_, block) =>
      blockOf(columns.slice(block * perBlock, (block + 1) * perBlock), shares, italics, columnWidth, largest)
    ),
    spacing: 22
  }
}

function blockOf(
  columns: readonly {readonly habitat: AssemblageResult; readonly index: number}[],
  shares: readonly SpeciesShare[],
  italics: ReadonlySet<string>,
  columnWidth: number,
  largest: number
): Record<string, unknown> {
  const [width, height] = [columnWidth * columns.length, shares.length * rowHeight]
  const cells = columns.flatMap(({habitat, index}, column) =>
    shares.map(({byHabitat}, row) => {
      const share = byHabitat[index] ?? 0
      const from = column * columnWidth + barsFrom
      return {
        from,
        to: from + (share / largest) * (columnWidth - barsFrom - 14),
        top: row * rowHeight + 3,
        bottom: (row + 1) * rowHeight - 3,
        middle: (row + 0.5) * rowHeight,
        text: share === 0 ? '0' : numberWords(share, 'share').replace(' %', ''),
        right: from - 5,
        none: share === 0,
        ...habitatFields(habitat.style)
      }
    })
  )
  const scale = (length: number) => ({domain: [0, length], range: [0, length], nice: false, zero: false})
  const number = (none: boolean) => ({
    data: {values: cells.filter((cell) => cell.none === none)},
    mark: {
      type: 'text',
      align: 'right',
      baseline: 'middle',
      x: {expr: 'datum.right'},
      y: {expr: 'datum.middle'},
      ...(none && {color: inkTones.muted.light})
    },
    encoding: {text: {field: 'text', type: 'nominal'}}
  })
  return {
    width,
    height,
    layer: [
      {
        data: {values: cells},
        mark: {type: 'rect', opacity: 1},
        encoding: {
          x: {field: 'from', type: 'quantitative', scale: scale(width), axis: null},
          x2: {field: 'to'},
          y: {field: 'top', type: 'quantitative', scale: scale(height), axis: null},
          y2: {field: 'bottom'},
          color: habitatColour
        }
      },
      number(false),
      number(true),
      ...nameColumn(
        shares.map(({taxon}, row) => ({name: taxon, middle: (row + 0.5) * rowHeight})),
        italics
      ),
      ...columns.flatMap(({habitat}, column) => heading(habitat, column * columnWidth, columnWidth))
    ]
  }
}

/** A panel's heading, moved to its column. */
function heading(habitat: AssemblageResult, left: number, columnWidth: number): Record<string, unknown>[] {
  return panelHeading(habitat, columnWidth - 8).map((layer) => {
    const mark = layer.mark as Readonly<Record<string, unknown>>
    return {...layer, mark: {...mark, x: Number(mark.x) + left + 6}}
  })
}

function alternative({label, habitats}: ScopeResult, shares: readonly SpeciesShare[]): string {
  const each = habitats.map((habitat, index) => {
    if (habitat.ranks.length === 0) return `${sentenceStart(habitat.label)}: none caught.`
    const own = shares
      .filter(({isRest}) => !isRest)
      .map(({taxon, byHabitat}) => ({taxon, share: byHabitat[index] ?? 0}))
      .filter(({share}) => share > 0)
      .toSorted((one, other) => other.share - one.share)
      .slice(0, 3)
      .map(({taxon, share}) => `${taxon} ${numberWords(share, 'share')}`)
    return `${sentenceStart(habitat.label)}: ${own.length === 0 ? 'none of the species shown' : listWords(own)}.`
  })
  return [
    `${sentenceStart(label)}: bars of the share of the commonest species in the catch, one row for each species and one column for each habitat.`,
    ...each
  ].join(' ')
}
