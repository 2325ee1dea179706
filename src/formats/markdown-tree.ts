import type {BlockContent, PhrasingContent, Root, RootContent, TableRow} from 'mdast'
import type {Document, FigureBlock, TableBlock} from '../report/document.ts'
import {plainText} from '../report/plain-text.ts'
import {type PrintedCell, printTable} from '../report/print-table.ts'
import {linkAddresses} from './link-addresses.ts'

/** A document in the words of plain Markdown: figures, tables, citations and references spelt out. */
export function markdownTree(document: Document): Root {
  return linkAddresses({type: 'root', children: document.tree.children.flatMap(plain)})
}

function plain(node: RootContent): RootContent[] {
  switch (node.type) {
    case 'figureBlock':
      return figure(node)
    case 'tableBlock':
      return table(node)
    case 'referenceList':
      return node.children.length === 0
        ? []
        : node.children.map(({children}) => paragraph(children.flatMap(inline)))
    case 'documentLink':
      return [{type: 'link', url: node.href, title: null, children: node.children}]
    // A paragraph has no id in Markdown that a link could lead to.
    case 'crossReference':
    case 'citedWork':
      return node.children
    default:
      return 'children' in node
        ? [{...node, children: (node.children as RootContent[]).flatMap(plain)} as RootContent]
        : [node]
  }
}

function inline(node: PhrasingContent): PhrasingContent[] {
  return plain(node) as PhrasingContent[]
}

function figure({name, number, figure: shown, children}: FigureBlock): BlockContent[] {
  const caption = labelled(`Figure ${number}.`, children)
  if (shown.spec === undefined) {
    const reason = `Not drawn, because ${plainText(shown.notDrawn ?? 'there is nothing to draw')}.`
    return [
      paragraph([
        ...caption,
        {type: 'text', value: ' '},
        {type: 'emphasis', children: [{type: 'text', value: reason}]}
      ])
    ]
  }
  const picture: PhrasingContent = {
    type: 'image',
    url: encodeURI(`figures/${name}.svg`),
    title: null,
    alt: plainText(shown.alternative)
  }
  return [paragraph([picture]), paragraph(caption)]
}

function table({name, number, table: shown, children}: TableBlock): BlockContent[] {
  const caption = labelled(`Table ${number}.`, children)
  const {columns, rows, foot, notes, rowsInAll} = printTable(shown)
  if (rows.length === 0) {
    const empty: PhrasingContent = {
      type: 'emphasis',
      children: [{type: 'text', value: plainText(shown.empty)}]
    }
    return [paragraph([...caption, {type: 'text', value: ' '}, empty])]
  }
  const head: TableRow = {
    type: 'tableRow',
    children: columns.map((column) => ({
      type: 'tableCell',
      children: [
        {type: 'text', value: column.unit === undefined ? column.head : `${column.head} (${column.unit})`}
      ]
    }))
  }
  const below = notes.map(({mark, text}) => (mark === undefined ? text : `(${mark}) ${text}`))
  if (rows.length < rowsInAll)
    below.push(`The first ${rows.length} of ${rowsInAll} rows; all of them are in tables/${name}.csv.`)
  return [
    paragraph(caption),
    {
      type: 'table',
      align: columns.map(({align}) => align),
      children: [head, ...rows.map((cells) => row(cells, false)), ...foot.map((cells) => row(cells, true))]
    },
    ...(below.length > 0 ? [paragraph([{type: 'text', value: below.join(' ')}])] : [])
  ]
}

function row(cells: readonly PrintedCell[], isFoot: boolean): TableRow {
  return {
    type: 'tableRow',
    children: cells.map(({children, mark}) => {
      const words: PhrasingContent[] = isFoot && children.length > 0 ? [{type: 'strong', children}] : children
      return {
        type: 'tableCell',
        children: mark === undefined ? words : [...words, {type: 'text', value: ` (${mark})`}]
      }
    })
  }
}

function labelled(label: string, caption: readonly PhrasingContent[]): PhrasingContent[] {
  const strong: PhrasingContent = {type: 'strong', children: [{type: 'text', value: label}]}
  const words = caption.flatMap(inline)
  return words.length === 0 ? [strong] : [strong, {type: 'text', value: ' '}, ...words]
}

function paragraph(children: readonly PhrasingContent[]): BlockContent {
  return {type: 'paragraph', children: merged(children)}
}

/** Texts side by side as one, as a reader of the Markdown will find them. */
function merged(nodes: readonly PhrasingContent[]): PhrasingContent[] {
  const all: PhrasingContent[] = []
  for (const node of nodes) {
    const before = all.at(-1)
    if (node.type !== 'text' || before?.type !== 'text') all.push(node)
    else all[all.length - 1] = {type: 'text', value: before.value + node.value}
  }
  return all
}
