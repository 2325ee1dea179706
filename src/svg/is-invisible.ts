import type {Element} from 'hast'

const outlines = new Set(['path', 'rect', 'line', 'circle'])

/**
 * Whether an element of the library's SVG leaves no trace on paper. The library writes many: frames without colour,
 * placeholders that are not displayed, and axis labels that had to give way, which screen readers and searches
 * would still find.
 */
export function isInvisible({tagName, properties, children}: Element): boolean {
  if (properties.display === 'none' || Number(properties.opacity ?? 1) === 0) return true
  if (tagName === 'text') return children.length === 0
  if (!outlines.has(tagName)) return false
  return !isColour(properties.fill) && !isColour(properties.stroke)
}

function isColour(value: unknown): boolean {
  return typeof value === 'string' && value !== '' && value !== 'none'
}
