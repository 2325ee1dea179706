import type {Config} from 'vega-lite'
import {habitatStyleCount, habitatStyles} from '../model/habitat-style.ts'
import {inkTones} from '../model/ink.ts'

/** Arial, Helvetica and Liberation Sans have the same widths; the text is measured with those. */
export const fontStack = 'Arial, Helvetica, Liberation Sans, sans-serif'

const ink = inkTones.ink.light
const muted = inkTones.muted.light
const rule = inkTones.rule.light
const paper = inkTones.paper.light
const habitats = habitatStyles(habitatStyleCount)

/**
 * How every chart looks. Type of 11 and 12 px, hairline axes, faint grid lines for quantities only, no frame; names
 * of value axes stand level above the axis, so that nobody has to turn their head. A mark of no habitat is grey,
 * because a habitat's colour on it would be read as that habitat. Nothing is cut short: every limit is off.
 */
export const theme: Config = {
  background: paper,
  padding: 4,
  font: fontStack,
  aria: false,
  view: {
    stroke: null,
    continuousWidth: 520,
    continuousHeight: 280,
    discreteWidth: {step: 36},
    discreteHeight: {step: 24}
  },

  axis: {
    labelColor: ink,
    labelFontSize: 11,
    labelFlush: false,
    labelLimit: 0,
    labelPadding: 5,
    titleColor: muted,
    titleFontSize: 12,
    titleFontWeight: 'normal',
    titleLimit: 0,
    titlePadding: 10,
    domainColor: muted,
    domainWidth: 0.75,
    tickColor: muted,
    tickWidth: 0.75,
    tickSize: 4,
    gridColor: rule,
    gridWidth: 0.75
  },
  axisBand: {ticks: false, domain: false},
  axisPoint: {ticks: false, domain: false},
  axisQuantitative: {tickCount: 5},
  axisTemporal: {grid: false, labelFlush: false},
  axisYQuantitative: {
    domain: false,
    ticks: false,
    titleAngle: 0,
    titleAnchor: 'end',
    titleAlign: 'left',
    titleBaseline: 'bottom',
    titleX: 0,
    titleY: -9
  },
  header: {
    labelColor: ink,
    labelFontSize: 12,
    labelFontWeight: 'bold',
    labelAnchor: 'start',
    labelLimit: 0,
    titleColor: muted,
    titleFontSize: 12,
    titleFontWeight: 'normal',
    titleAnchor: 'start',
    titleLimit: 0
  },
  headerRow: {labelOrient: 'top', labelAngle: 0, labelPadding: 0},
  legend: {
    // Below, because the names of value axes stand above, where the library would let a legend run over them.
    orient: 'bottom',
    direction: 'horizontal',
    columns: 4,
    columnPadding: 16,
    rowPadding: 4,
    offset: 10,
    labelColor: ink,
    labelFontSize: 11,
    labelLimit: 0,
    labelOffset: 5,
    titleColor: muted,
    titleFontSize: 11,
    titleFontWeight: 'normal',
    titleLimit: 0,
    symbolSize: 60,
    gradientThickness: 10
  },
  title: {
    color: ink,
    fontSize: 12,
    fontWeight: 'bold',
    anchor: 'start',
    frame: 'group',
    offset: 10,
    limit: 0,
    subtitleColor: muted,
    subtitleFontSize: 11
  },

  mark: {color: muted},
  bar: {color: muted},
  point: {size: 60, filled: true, opacity: 1},
  line: {strokeWidth: 1.75, strokeJoin: 'round'},
  area: {opacity: 0.18},
  rule: {color: muted, strokeWidth: 1.25},
  errorbar: {rule: {strokeWidth: 1.25}, ticks: false},
  errorband: {band: {opacity: 0.18}, borders: false},
  text: {color: ink, fontSize: 11},
  scale: {barBandPaddingInner: 0.3, rectBandPaddingInner: 0.04, minOpacity: 1},

  range: {
    category: habitats.map((habitat) => habitat.colour),
    symbol: habitats.map((habitat) => habitat.shape),
    ordinal: ['#c2d6ea', '#86afd6', '#4a83bb', '#1f5690', '#0c2f57'],
    ramp: ['#eaf1f8', '#c2d6ea', '#86afd6', '#4a83bb', '#1f5690', '#0c2f57'],
    heatmap: ['#eaf1f8', '#c2d6ea', '#86afd6', '#4a83bb', '#1f5690', '#0c2f57'],
    diverging: ['#9a4a12', '#dcae84', '#f1efea', '#9dbbd9', '#1f5690']
  }
}
