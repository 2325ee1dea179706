import type {Element, Properties, Root} from 'hast'
import {toHtml} from 'hast-util-to-html'
import {h} from 'hastscript'
import type {Document} from '../report/document.ts'
import {inkRules} from '../svg/ink-classes.ts'
import {anchorName} from './anchor-name.ts'
import {fillSlots} from './fill-slots.ts'
import {htmlTree} from './html-tree.ts'
import {pageIds} from './page-ids.ts'
import {kindWords, pageKind, type ReportPage} from './page-kind.ts'
import {contents, documentNavigation, otherForms} from './page-parts.ts'

/** What a page is made from, besides its document. */
export interface PageInput {
  readonly document: Document
  /** Texts of templates/ by file name: `page.html` and `page.css` are used. */
  readonly templates: ReadonlyMap<string, string>
  /** Photographs that texts show, as `data:` addresses, by the path that the text names. */
  readonly photos?: ReadonlyMap<string, string>
  /** All pages of the report, in the order in which they are to be listed. */
  readonly documents: readonly ReportPage[]
  readonly study: {readonly title: string; readonly season: string}
  /** Language of the page, `en-GB` where absent. */
  readonly language?: string
}

/** SVG text of each figure, by the figure's name. */
export type Pictures = ReadonlyMap<string, string>

/**
 * One page, complete in itself: style and pictures inside, no script, nothing asked of another host. It wants its
 * pictures last, since another thread may still be drawing them.
 *
 * @throws Error when `page.html` or `page.css` is not among the templates.
 */
export function html(input: PageInput): (pictures: Pictures) => string {
  const {document, documents, study} = input
  const kind = pageKind(document.name)
  const inUse = document.tree.children.flatMap((node) => {
    if (node.type === 'figureBlock') return [anchorName('figure', node.name)]
    if (node.type === 'tableBlock') return [anchorName('table', node.name)]
    return []
  })
  const ids = pageIds([
    ...inUse,
    ...document.cited.map((key) => anchorName('ref', key)),
    'text',
    'footnote-label'
  ])
  const {tree, sections, rows} = htmlTree(document, ids, documents, input.photos ?? new Map())
  const body = placeContents(tree, contents(sections, kind))
  const style = `${fillSlots(template(input, 'page.css'), {running: cssString(study.title)})}\n${inkRules}`
  // The shell speaks British English; another language of the report takes its place.
  const shell = template(input, 'page.html').replace('lang="en-GB"', `lang="${input.language ?? 'en-GB'}"`)
  const slots = {
    kind,
    title: escaped(document.title === study.title ? study.title : `${document.title} · ${study.title}`),
    style: `<style>\n${style}\n</style>`,
    study: escaped(study.title),
    season: escaped(study.season),
    document: kindWords[kind],
    navigation: written(documentNavigation(kind, document.name, documents)),
    foot: written(otherForms(documents.find(({name}) => name === document.name)))
  }
  return (pictures) => {
    const text = toHtml(filled(body, pictures, rows), {allowDangerousHtml: true})
    return fillSlots(shell, {...slots, text: glued(text)})
  }
}

/** The contents come after the opening: before the second heading. */
function placeContents(tree: Root, part: Element | undefined): Root {
  if (part === undefined) return tree
  const headings = tree.children.flatMap((node, index) =>
    node.type === 'element' && /^h[1-6]$/.test(node.tagName) ? [index] : []
  )
  const place = headings[1] ?? tree.children.length
  return {...tree, children: [...tree.children.slice(0, place), part, ...tree.children.slice(place)]}
}

/**
 * Pictures and rows of tables are put in after everything else has been sanitised: that would take the pictures out,
 * and it would take long over the rows.
 */
function filled<Node extends Root | Element>(node: Node, pictures: Pictures, rows: readonly string[]): Node {
  const children = node.children.map((child) => {
    if (child.type !== 'element') return child
    const {dataFigure, dataRows, ...properties} = child.properties
    if (typeof dataFigure === 'string') return withText(child, properties, picture(pictures.get(dataFigure)))
    if (typeof dataRows === 'string') return withText(child, properties, rows[Number(dataRows)] ?? '')
    return filled(child, pictures, rows)
  })
  return {...node, children} as Node
}

function withText(element: Element, properties: Properties, value: string): Element {
  return {...element, properties, children: [{type: 'raw', value}] as unknown as Element['children']}
}

function picture(svg = ''): string {
  return svg.replace(/^\s*<\?xml[^>]*\?>\s*/, '')
}

function template({templates}: PageInput, name: string): string {
  const text = templates.get(name)
  if (text === undefined) throw new Error(`templates/${name} is missing`)
  return text
}

function written(part: Element | undefined): string {
  return part === undefined ? '' : toHtml(part)
}

function escaped(text: string): string {
  return toHtml(h(null, text))
}

/** The inside of a CSS string in a style element: signs that could end either are written as code points. */
function cssString(text: string): string {
  return [...text]
    .map((sign) => (/[\p{L}\p{N} ,.-]/u.test(sign) ? sign : `\\${sign.codePointAt(0)?.toString(16)} `))
    .join('')
}

/** A number stays on one line with its per cent sign, and with what it is the value of: `p = 0.03`, `n = 12`. */
function glued(text: string): string {
  return text
    .replace(/(\d) %/g, '$1\u00a0%')
    .replace(/\b([nNpqFHAB]|R²) ([=]|&lt;|&#x3C;|<) (?=\d)/g, '$1\u00a0$2\u00a0')
}
