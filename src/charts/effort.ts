import {inkTones} from '../model/ink.ts'
import {listWords} from '../model/list-words.ts'
import {isDefined, type Measure} from '../model/quantity.ts'
import type {HabitatResult, Results} from '../model/results.ts'
import type {Chart, Figure} from './chart.ts'
import {habitatColour, habitatFields} from './habitat-symbols.ts'
import {cautionNotes, cautiousWords, measureWords} from './measure-words.ts'
import {withNotes} from './notes.ts'
import {plainValue} from './plain-value.ts'
import {rowHeight, rowLabels, rowLabelWidth, rowPosition} from './row-labels.ts'
import {sentenceStart} from './sentence-start.ts'

/** Trap-nights achieved, not sorted yet and lost, one bar for each habitat. */
export const effort: Chart = {
  name: 'effort',
  summary: 'Trap-nights achieved, not sorted yet and lost, by habitat.',
  figures: (results) => [figure(results)]
}

const plotWidth = 222

/**
 * The parts of a bar from left to right: the emptier the fill, the less was had from those nights. Widths of the
 * heads, in pixels, are those in a wide font, so that the squares stand clear before them.
 */
const parts = [
  {key: 'net', head: 'achieved', headWidth: 49, fillOpacity: 1, right: 70},
  {key: 'unsorted', head: 'not sorted yet', headWidth: 76, fillOpacity: 0.35, right: 170},
  {key: 'lost', head: 'lost', headWidth: 22, fillOpacity: 0, right: 220}
] as const

type Part = (typeof parts)[number]

/** Old data know what was achieved, and nothing of what was lost. */
function partsKnown(habitats: readonly HabitatResult[]): readonly Part[] {
  return parts.filter(({key}) => habitats.some(({effort: nights}) => isDefined(nights[key])))
}

/** Right edge of the share lost, from the end of the plot. */
const shareRight = 262

function figure(results: Results): Figure {
  const {habitats} = results
  const base = {
    name: 'effort',
    title: 'Trap-nights achieved and lost in each habitat',
    alternative: alternative(results),
    data: {
      columns: [
        'habitat_id',
        'habitat',
        'planned_nights',
        'net_nights',
        'unsorted_nights',
        'lost_nights',
        'share_lost'
      ],
      rows: habitats.map(({id, label, effort: {planned, net, unsorted, lost, shareLost}}) => [
        id,
        label,
        ...[planned, net, unsorted, lost, shareLost].map(plainValue)
      ])
    }
  }
  const notDrawn = whyNotDrawn(habitats)
  return notDrawn === undefined
    ? {...base, spec: withNotes(specification(habitats), notes(habitats), -rowLabelWidth)}
    : {...base, notDrawn}
}

function whyNotDrawn(habitats: readonly HabitatResult[]): string | undefined {
  if (habitats.length === 0) return 'no habitat is on record'
  const some = habitats.some(({effort: nights}) => parts.some(({key}) => (plainValue(nights[key]) ?? 0) > 0))
  return some ? undefined : 'there are no trap-nights on record'
}

function notes(habitats: readonly HabitatResult[]): readonly string[] {
  return habitats.flatMap(({label, effort: {net, unsorted, lost, shareLost}}) =>
    cautionNotes(sentenceStart(label), [net, unsorted, lost, shareLost])
  )
}

function specification(habitats: readonly HabitatResult[]): Record<string, unknown> {
  const known = partsKnown(habitats)
  const isShareKnown = habitats.some(({effort: nights}) => isDefined(nights.shareLost))
  const bars = habitats.flatMap(({style, effort: nights}, row) =>
    parts.flatMap(({key, fillOpacity}, order) => {
      const value = plainValue(nights[key])
      if (value === null || value <= 0) return []
      return [{row, order, value, fillOpacity, ...habitatFields(style)}]
    })
  )
  return {
    width: plotWidth,
    height: {step: rowHeight(habitats, 34)},
    layer: [
      {
        data: {values: bars},
        mark: {type: 'bar', height: 16, strokeWidth: 1},
        encoding: {
          x: {
            field: 'value',
            type: 'quantitative',
            stack: 'zero',
            title: 'trap-nights',
            axis: {tickCount: 4, format: ',d'}
          },
          y: rowPosition,
          order: {field: 'order', type: 'quantitative'},
          fill: habitatColour,
          stroke: habitatColour,
          fillOpacity: {field: 'fillOpacity', type: 'quantitative', scale: null}
        }
      },
      ...rowLabels(habitats),
      ...heads(known, isShareKnown),
      ...known.map(({key, right}) => numbers(habitats, ({effort: nights}) => nights[key], right)),
      ...(isShareKnown ? [numbers(habitats, ({effort: nights}) => nights.shareLost, shareRight)] : [])
    ]
  }
}

/** The heads of the columns of numbers; their squares say how the parts of a bar are filled. */
function heads(known: readonly Part[], isShareKnown: boolean): Record<string, unknown>[] {
  const tone = inkTones.muted.light
  const share = {head: 'share', headWidth: null, fillOpacity: 0, right: shareRight}
  return [...known, ...(isShareKnown ? [share] : [])].flatMap(({head, headWidth, fillOpacity, right}) => [
    {
      data: {values: [{text: head}]},
      mark: {type: 'text', align: 'right', baseline: 'middle', color: tone, x: plotWidth + right, y: -10},
      encoding: {text: {field: 'text', type: 'nominal'}}
    },
    ...(headWidth === null
      ? []
      : [
          {
            data: {values: [{}]},
            mark: {
              type: 'point',
              shape: 'square',
              size: 81,
              opacity: 1,
              fill: tone,
              fillOpacity,
              stroke: tone,
              strokeWidth: 1,
              x: plotWidth + right - headWidth - 9,
              y: -10
            }
          }
        ])
  ])
}

function numbers(
  habitats: readonly HabitatResult[],
  measureOf: (habitat: HabitatResult) => Measure,
  right: number
): Record<string, unknown> {
  return {
    data: {values: habitats.map((habitat, row) => ({row, text: shortWords(measureOf(habitat))}))},
    mark: {type: 'text', align: 'right', baseline: 'middle', x: plotWidth + right},
    encoding: {y: rowPosition, text: {field: 'text', type: 'nominal'}}
  }
}

const shortWords = (measure: Measure): string => (isDefined(measure) ? measureWords(measure) : '–')

function alternative({habitats, effort: all}: Results): string {
  if (habitats.length === 0) return 'There is no habitat, so there is no effort to show.'
  const each = habitats.map(({label, effort: nights}) => {
    const share = isDefined(nights.shareLost) ? ` (${measureWords(nights.shareLost)} of those planned)` : ''
    const told = partsKnown(habitats).map(({key, head}) => {
      return isDefined(nights[key]) ? `${cautiousWords(nights[key])} ${head}` : `${head} not defined`
    })
    return `${sentenceStart(label)}: ${told.join(', ')}${share}.`
  })
  const planned = isDefined(all.planned) ? ` of ${cautiousWords(all.planned)} planned` : ''
  const total = `In all, ${cautiousWords(all.net)}${planned} trap-nights were achieved.`
  return ['Bars of trap-nights, one for each habitat.', ...each, total, ...mostLost(habitats)].join(' ')
}

function mostLost(habitats: readonly HabitatResult[]): string[] {
  const shares = habitats.map(({effort: {shareLost}}) => plainValue(shareLost) ?? 0)
  const largest = Math.max(...shares)
  if (habitats.length < 2 || largest <= 0) return []
  const where = habitats.filter((_, index) => shares[index] === largest)
  return [`The largest share was lost in ${listWords(where.map(({label}) => label))}.`]
}
