/** A piece of XML, written out. */
export interface Xml {
  readonly xml: string
}

type Attributes = Readonly<Record<string, string | undefined>>
export type XmlChild = Xml | string | undefined | readonly XmlChild[]

/**
 * One element. Strings among its children are text; `undefined` is left out, and so is an attribute without a value.
 *
 * @throws RangeError for an element or attribute name that is none: names come from our own code.
 */
export function element(name: string, attributes: Attributes, ...children: readonly XmlChild[]): Xml {
  const written = Object.entries(attributes)
    .filter((entry): entry is [string, string] => entry[1] !== undefined)
    .map(([key, value]) => ` ${checkedName(key)}="${escaped(value, true)}"`)
    .join('')
  const content = children.map(contentOf).join('')
  const tag = checkedName(name) + written
  return {xml: content === '' ? `<${tag}/>` : `<${tag}>${content}</${name}>`}
}

/** An element that holds text, or nothing where there is none. */
export function textElement(
  name: string,
  text: string | undefined,
  attributes: Attributes = {}
): Xml | undefined {
  return text === undefined || text.trim() === '' ? undefined : element(name, attributes, text)
}

/** A paragraph, as EML and its kind call it. */
export function paragraph(text: string): Xml {
  return element('para', {}, text)
}

/** The whole document, in UTF-8. An element that holds elements only has each on a line of its own. */
export function xmlDocument(root: Xml): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${root.xml.replaceAll('><', '>\n<')}\n`
}

function contentOf(child: XmlChild): string {
  if (child === undefined) return ''
  if (typeof child === 'string') return escaped(child, false)
  return 'xml' in child ? child.xml : child.map(contentOf).join('')
}

function checkedName(name: string): string {
  if (!/^[A-Za-z_][\w.-]*(:[A-Za-z_][\w.-]*)?$/.test(name)) throw new RangeError(`${name} is no XML name`)
  return name
}

const references: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  // A reader turns these into plain spaces where they stand in an attribute as they are.
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;'
}

/** What XML 1.0 cannot hold in any form (section 2.2, Char) is taken out. */
const impossible = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu

function escaped(text: string, inAttribute: boolean): string {
  return text
    .replace(impossible, '')
    .replace(inAttribute ? /[&<>"\t\n\r]/g : /[&<>\r]/g, (sign) => references[sign]!)
}
