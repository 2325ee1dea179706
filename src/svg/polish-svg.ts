import type {Element, ElementContent} from 'hast'
import {toHtml} from 'hast-util-to-html'
import {cleanAttributes} from './clean-attributes.ts'
import {dropXmlControls} from './drop-xml-controls.ts'
import {inkClasses} from './ink-classes.ts'
import {isInvisible} from './is-invisible.ts'
import {privateIds} from './private-ids.ts'
import {readSvg, type SvgElement} from './read-svg.ts'
import {fontStack} from './theme.ts'

export interface Label {
  readonly id: string
  readonly title: string
  readonly description: string
}

/** What the chart library draws with. Links lose their tag and keep their content; all other elements go. */
const drawn = new Set(
  'svg g path rect line circle text tspan defs clipPath linearGradient radialGradient pattern stop'.split(' ')
)

/**
 * Turns the chart library's SVG into the one that leaves: labelled for screen readers as one image, ids unique on
 * the page, coordinates with two decimals, colours of the ink tones marked with classes, without links, scripts,
 * classes of the library, and whatever is not seen.
 *
 * The SVG goes through a parser and back, so that text of a study that looks like markup stays the text it is.
 *
 * @throws Error when a coordinate is not a number.
 */
export function polishSvg(svg: string, label: Label): string {
  const root = polishRoot(readSvg(dropXmlControls(svg)), privateIds(label.id))
  root.properties = {
    xmlns: 'http://www.w3.org/2000/svg',
    role: 'img',
    'aria-labelledby': `title_${label.id}`,
    'aria-describedby': `desc_${label.id}`,
    ...root.properties,
    // A substitute font wider than allowed for then runs into the page's margin instead of being cut.
    overflow: 'visible',
    'font-family': fontStack
  }
  root.children.unshift(
    textElement('title', `title_${label.id}`, label.title),
    textElement('desc', `desc_${label.id}`, label.description)
  )
  const text = toHtml(root, {space: 'svg', closeEmptyElements: true, tightSelfClosing: true})
  // Where HTML writes this as it is, XML forbids it.
  return text.replaceAll(']]>', ']]&#x3E;')
}

function polishRoot(svg: SvgElement, rename: (value: string) => string): Element {
  const [polished] = polishElement(svg, rename)
  if (polished?.type !== 'element') throw new Error('the drawing is empty')
  return polished
}

/** The nodes that take the element's place: none, itself, or its children. */
function polishElement(element: SvgElement, rename: (value: string) => string): ElementContent[] {
  const {name} = element
  const isLink = name === 'a'
  if (!isLink && (!drawn.has(name) || isInvisible(element))) return []

  // Before the children, so that ids are numbered in the order of the document.
  const properties = inkClasses(cleanAttributes(element, rename))
  const children = element.children.flatMap((child): ElementContent[] => {
    if (typeof child === 'string') return [{type: 'text', value: child}]
    // A clip path's outline has no colour, and yet it must stay.
    return name === 'clipPath' ? [outline(child, rename)] : polishElement(child, rename)
  })
  if (isLink) return children
  if (name === 'g') {
    if (children.length === 0) return []
    if (Object.keys(properties).length === 0) return children
  }
  return [{type: 'element', tagName: name, properties, children}]
}

function outline(element: SvgElement, rename: (value: string) => string): Element {
  if (element.children.length > 0) throw new Error(`the outline '${element.name}' of a clip path holds more`)
  return {type: 'element', tagName: element.name, properties: cleanAttributes(element, rename), children: []}
}

function textElement(tagName: string, id: string, text: string): Element {
  return {
    type: 'element',
    tagName,
    properties: {id},
    children: [{type: 'text', value: dropXmlControls(text)}]
  }
}
