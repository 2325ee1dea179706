import type {Properties} from 'hast'
import type {SvgElement} from './read-svg.ts'
import {fontStack} from './theme.ts'

/** Attributes that hold coordinates, lengths or angles, with their default values. */
const measures: ReadonlyMap<string, string> = new Map([
  ...['d', 'viewBox', 'font-size', 'stroke-dasharray', 'width', 'height'].map((name) => [name, ''] as const),
  ...['x', 'y', 'x1', 'y1', 'x2', 'y2', 'dx', 'dy', 'cx', 'cy', 'fx', 'fy'].map(
    (name) => [name, '0'] as const
  ),
  ...['r', 'rx', 'ry', 'fr', 'stroke-dashoffset'].map((name) => [name, '0'] as const),
  ...['opacity', 'fill-opacity', 'stroke-opacity', 'stop-opacity', 'stroke-width'].map(
    (name) => [name, '1'] as const
  ),
  ['stroke-miterlimit', '4'],
  ['transform', 'translate(0,0)'],
  ['offset', '']
])

/** Other attributes that stay, with the value that may be left out because it applies anyway. */
const words: ReadonlyMap<string, string> = new Map([
  ['fill', ''],
  ['stroke', ''],
  ['stop-color', ''],
  ['stroke-linecap', 'butt'],
  ['stroke-linejoin', 'miter'],
  ['text-anchor', 'start'],
  ['font-family', fontStack],
  ['font-style', 'normal'],
  ['font-weight', 'normal'],
  ['font-variant', 'normal'],
  ['patternUnits', ''],
  ['gradientUnits', ''],
  ['preserveAspectRatio', '']
])

/** Meaningless without a stroke. */
const strokeStyle = [
  'stroke-width',
  'stroke-dasharray',
  'stroke-dashoffset',
  'stroke-linecap',
  'stroke-linejoin',
  'stroke-miterlimit',
  'stroke-opacity'
]

/** Elements on which 0 is the default of every coordinate; gradients have others. */
const gradients = new Set(['linearGradient', 'radialGradient'])

/**
 * The attributes of an element that are needed to draw it, coordinates rounded to two decimals, ids renamed.
 * Everything else is left out: roles and labels (the picture is one image to a screen reader), classes, links.
 *
 * @throws Error when a coordinate is not a number.
 */
export function cleanAttributes(element: SvgElement, rename: (value: string) => string): Properties {
  const kept: Properties = {}
  for (const [name, text] of Object.entries(element.attributes)) {
    if (name === 'id' || name === 'clip-path') {
      kept[name] = rename(text)
    } else if (measures.has(name)) {
      const rounded = roundNumbers(element.name, name, text)
      if (rounded !== measures.get(name) || gradients.has(element.name)) kept[name] = rounded
    } else if (words.has(name) && text !== words.get(name)) {
      kept[name] = text.startsWith('url(#') ? rename(text) : text
    }
  }
  if (kept.stroke === undefined) for (const name of strokeStyle) delete kept[name]
  return kept
}

/** Two decimals are a hundredth of a pixel; they also hide the last digits, where machines may differ. */
function roundNumbers(tagName: string, name: string, text: string): string {
  if (/NaN|Infinity|undefined|null/.test(text))
    throw new Error(`'${name}' of a ${tagName} is not a number: ${text}`)
  return text.replace(/-?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi, (number) => {
    const rounded = Math.round(Number(number) * 100) / 100
    // `+ 0` makes 0 of -0.
    return String(rounded + 0)
  })
}
