import {SaxesParser} from 'saxes'

export interface SvgElement {
  readonly name: string
  /** By their names in SVG. */
  readonly attributes: Readonly<Record<string, string>>
  /** Elements and text. */
  readonly children: readonly (SvgElement | string)[]
}

/**
 * The outermost element of an SVG file.
 *
 * @throws Error when the text is empty or not well-formed XML.
 */
export function readSvg(svg: string): SvgElement {
  const parser = new SaxesParser()
  const outermost: (SvgElement | string)[] = []
  const open = [outermost]
  parser.on('opentag', ({name, attributes}) => {
    const children: (SvgElement | string)[] = []
    open.at(-1)!.push({name, attributes, children})
    open.push(children)
  })
  parser.on('closetag', () => open.pop())
  parser.on('text', (text) => open.at(-1)!.push(text))
  parser.on('cdata', (text) => open.at(-1)!.push(text))
  parser.write(svg).close()
  // Without one, the parser has thrown.
  return outermost.find((child) => typeof child !== 'string')!
}
