import type {Element, ElementContent, Root} from 'hast'
import {sanitize} from 'hast-util-sanitize'
import {h} from 'hastscript'
import type {Heading, Image, List, ListItem, Nodes, PhrasingContent, Table, TableCell} from 'mdast'
import {toString as wordsOf} from 'mdast-util-to-string'
import remarkRehype, {defaultHandlers, type Options} from 'remark-rehype'
import {unified} from 'unified'
import type {
  CitedWork,
  CrossReference,
  Document,
  DocumentLink,
  FigureBlock,
  ReferenceEntry,
  ReferenceList,
  TableBlock
} from '../report/document.ts'
import {anchorName, anchorOf} from './anchor-name.ts'
import {classOf} from './class-of.ts'
import {htmlFigure} from './html-figure.ts'
import {rowsKept} from './html-rows.ts'
import {htmlTable, scrollBox} from './html-table.ts'
import {linkAddresses} from './link-addresses.ts'
import type {PageIds} from './page-ids.ts'
import {pageKind, type ReportPage} from './page-kind.ts'
import {documentCard, type Section, siteLine} from './page-parts.ts'
import {sanitizeSchema} from './sanitize-schema.ts'

type Handlers = NonNullable<Options['handlers']>
type State = Parameters<NonNullable<Handlers['heading']>>[0]

/**
 * A document as elements of a page, sanitised, its sections in order, and the rows of its tables, whose places
 * `data-rows` names.
 */
export function htmlTree(
  document: Document,
  ids: PageIds,
  pages: readonly ReportPage[],
  photos: ReadonlyMap<string, string>
): {tree: Root; sections: Section[]; rows: readonly string[]} {
  const sections: Section[] = []
  const {keep: keepRows, rows} = rowsKept()
  const hasReferences = document.tree.children.some(({type}) => type === 'referenceList')
  const kind = pageKind(document.name)
  let tables = 0
  const handlers: Handlers = {
    heading(state: State, node: Heading) {
      const title = wordsOf(node)
      const id = ids.take(title)
      sections.push({id, depth: node.depth, title})
      return h(`h${node.depth}`, {id}, state.all(node))
    },
    figureBlock: (state: State, node: FigureBlock) => htmlFigure(node, {phrase: phrased(state), keepRows}),
    tableBlock: (state: State, node: TableBlock) =>
      htmlTable(node, {phrase: phrased(state), keepRows}, kind !== 'site'),
    table(state: State, node: Table) {
      tables += 1
      return plainTable(state, node, ids.take(`grid-${tables}`), tables)
    },
    crossReference: (state: State, node: CrossReference) =>
      h('a.see', {href: `#${anchorOf(node.target)}`}, state.all(node)),
    citedWork: (state: State, node: CitedWork) =>
      hasReferences ? h('a', {href: `#${anchorName('ref', node.key)}`}, state.all(node)) : state.all(node),
    referenceList: (state: State, node: ReferenceList) => h('ul.references', state.all(node)),
    referenceEntry: (state: State, node: ReferenceEntry) =>
      h('li', {id: anchorName('ref', node.key)}, state.all(node)),
    documentLink: (state: State, node: DocumentLink) => h('a', {href: node.href}, state.all(node)),
    list(state: State, node: List) {
      const areSites = node.children.every((item) => pageOf(item, pages)?.kind === 'site')
      const cards = node.children.map((item) => card(state, item, pages, areSites ? siteLine : documentCard))
      if (cards.includes(undefined)) return defaultHandlers.list(state, node)
      return h(areSites ? 'ul.site-reports' : 'ul.cards', cards)
    },
    image: (_: State, node: Image) => picture(node, photos)
  }
  const tree = unified()
    .use(remarkRehype, {handlers, clobberPrefix: 'foot-'})
    .runSync(linkAddresses(withoutCheckboxes(document.tree)))
  return {tree: sanitize(tree, sanitizeSchema) as Root, sections, rows}
}

function phrased(state: State): (children: readonly PhrasingContent[]) => ElementContent[] {
  return (children) => {
    const [only] = children
    // Most cells of tables are one text, which stays what it is.
    if (only?.type === 'text' && children.length === 1 && !only.value.includes('\n'))
      return [{type: 'text', value: only.value}]
    return state.all({type: 'paragraph', children: [...children]})
  }
}

/** A table that a template or an author wrote out in Markdown. */
function plainTable(state: State, {align, children}: Table, id: string, number: number): Element {
  const [head, ...rows] = children
  const cell = (tag: 'th' | 'td') => (node: TableCell, index: number) =>
    h(
      tag,
      {...classOf('number', align?.[index] === 'right'), ...(tag === 'th' && {scope: 'col'})},
      state.all(node)
    )
  const table = h('table.plain', [
    h('caption.unseen', {id}, `Table in the text, ${number}`),
    h('thead', h('tr', head?.children.map(cell('th')) ?? [])),
    h(
      'tbody',
      rows.map((row) => h('tr', row.children.map(cell('td'))))
    )
  ])
  return scrollBox(table, id)
}

/** An item that tells of a document, as a card or a line of a list; undefined for any other item. */
function card(
  state: State,
  item: ListItem,
  pages: readonly ReportPage[],
  shape: typeof documentCard
): Element | undefined {
  const page = pageOf(item, pages)
  const [link, ...told] = phrasingOf(item)
  if (page === undefined || link?.type !== 'documentLink') return undefined
  const [first, ...rest] = told
  const start = first?.type === 'text' ? [{...first, value: withoutLink(first.value)}] : told.slice(0, 1)
  return shape(page, phrased(state)(link.children), phrased(state)([...start, ...rest]))
}

function pageOf(item: ListItem, pages: readonly ReportPage[]): ReportPage | undefined {
  const [link] = phrasingOf(item)
  return link?.type === 'documentLink' ? pages.find(({name}) => name === link.name) : undefined
}

function phrasingOf({children: [line, ...more]}: ListItem): PhrasingContent[] {
  return line?.type === 'paragraph' && more.length === 0 ? line.children : []
}

/** What follows the link in a list, `, for a thesis`, as it stands below it on a card. */
function withoutLink(text: string): string {
  const words = text.replace(/^[\s–—:,-]+/, '')
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** A photograph of the study folder, inside the page; its words where its data are not at hand. */
function picture({url, alt, title}: Image, photos: ReadonlyMap<string, string>): Element {
  const src = photos.get(url)
  if (src === undefined) return h('em', `[Picture: ${alt || url}]`)
  return h('img', {src, alt: alt ?? '', ...(title && {title})})
}

/** A check box that nobody can tick is a sign: a screen reader would find a control without a name. */
function withoutCheckboxes<Node extends Nodes>(node: Node): Node {
  if (!('children' in node)) return node
  const children = (node.children as Nodes[]).map(withoutCheckboxes)
  if (node.type !== 'listItem' || typeof node.checked !== 'boolean') return {...node, children}
  const [first, ...rest] = children
  const sign: PhrasingContent = {type: 'text', value: node.checked ? '☑ ' : '☐ '}
  const marked = first?.type === 'paragraph' ? {...first, children: [sign, ...first.children]} : first
  return {...node, checked: null, children: marked === undefined ? [] : [marked, ...rest]}
}
