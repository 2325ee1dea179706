import type {SvgElement} from './read-svg.ts'

const outlines = new Set(['path', 'rect', 'line', 'circle'])

/**
 * Whether an element of the library's SVG leaves no trace on paper. The library writes many: frames without colour,
 * placeholders that are not displayed, and axis labels that had to give way, which screen readers and searches
 * would still find.
 */
export function isInvisible({name, attributes, children}: SvgElement): boolean {
  if (attributes.display === 'none' || Number(attributes.opacity ?? 1) === 0) return true
  if (name === 'text') return children.length === 0
  if (!outlines.has(name)) return false
  return !isColour(attributes.fill) && !isColour(attributes.stroke)
}

function isColour(value: unknown): boolean {
  return typeof value === 'string' && value !== '' && value !== 'none'
}
