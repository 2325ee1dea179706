import {BorderStyle, Paragraph, type ParagraphChild, type Table, TextRun} from 'docx'
import type {List, ListItem, RootContent} from 'mdast'
import type {Draft} from './docx-draft.ts'
import {bookmarked} from './docx-fields.ts'
import {indentOf, levelOf, numbersFrom} from './docx-lists.ts'
import {docxFigure} from './docx-picture.ts'
import {docxRuns, words} from './docx-runs.ts'
import {docxTable, docxTextTable, type Piece} from './docx-table.ts'

/** Where a block stands: in how many lists, and with which style of paragraph. */
interface Place {
  readonly depth: number
  readonly style: 'BodyText' | 'ListContinue' | 'Quote' | 'FootnoteText'
}

export const inText: Place = {depth: 0, style: 'BodyText'}
export const inFootnote: Place = {depth: 0, style: 'FootnoteText'}

/** Blocks of a document as paragraphs and tables, those for pages laid sideways told apart. */
export function docxBlocks(draft: Draft, nodes: readonly RootContent[], place: Place = inText): Piece[] {
  return nodes.flatMap((node) => block(draft, node, place))
}

function block(draft: Draft, node: RootContent, place: Place): Piece[] {
  switch (node.type) {
    case 'heading': {
      const style = `Heading${Math.max(1, node.depth - 1)}`
      const heading = new Paragraph({style, children: docxRuns(draft, node.children)})
      return [{blocks: [heading], landscape: false, isHeading: true}]
    }
    case 'paragraph':
      return upright([paragraph(docxRuns(draft, node.children), place)])
    case 'figureBlock':
      return upright(docxFigure(draft, node, (children) => docxRuns(draft, children)))
    case 'tableBlock':
      return [docxTable(draft, node)]
    case 'table':
      return [docxTextTable(draft, node)]
    case 'referenceList':
      return upright(
        node.children.map(({key, children}) => {
          const runs = docxRuns(draft, children)
          const name = draft.works.get(key)
          return new Paragraph({
            style: 'Bibliography',
            children: name === undefined ? runs : bookmarked(draft, name, runs)
          })
        })
      )
    case 'list':
      return list(draft, node, place)
    case 'blockquote':
      return docxBlocks(draft, node.children, {...place, style: 'Quote'})
    case 'code':
      return upright([new Paragraph({style: 'Code', children: codeLines(node.value)})])
    case 'thematicBreak':
      return upright([
        new Paragraph({
          border: {bottom: {style: BorderStyle.SINGLE, size: 4, space: 1, color: 'auto'}},
          spacing: {after: 200}
        })
      ])
    // A footnote stands where the first call of it is, raw HTML and the addresses of links nowhere.
    case 'footnoteDefinition':
    case 'html':
    case 'definition':
    case 'yaml':
      return []
    default:
      return upright([paragraph(docxRuns(draft, [node]), place)])
  }
}

function upright(blocks: readonly (Paragraph | Table)[]): Piece[] {
  return [{blocks, landscape: false}]
}

function paragraph(children: ParagraphChild[], {depth, style}: Place): Paragraph {
  return new Paragraph({style, ...(depth > 0 && {indent: {left: indentOf(depth - 1)}}), children})
}

function list(draft: Draft, {ordered, start, children}: List, {depth, style}: Place): Piece[] {
  const first = start ?? 1
  const numbering = {
    reference: ordered ? numbersFrom(first) : 'bullets',
    level: levelOf(depth),
    instance: ordered ? draft.next('list') : 0
  }
  if (ordered) draft.listStarts.add(first)
  const itemStyle = style === 'FootnoteText' ? style : ordered ? 'ListNumber' : 'ListBullet'
  return children.flatMap((item) => {
    const [line, ...rest]: RootContent[] = item.children
    const runs = line?.type === 'paragraph' ? docxRuns(draft, line.children) : []
    const more = line?.type === 'paragraph' || line === undefined ? rest : [line, ...rest]
    const inside: Place = {depth: depth + 1, style: style === 'FootnoteText' ? style : 'ListContinue'}
    return [
      ...upright([new Paragraph({style: itemStyle, numbering, children: [...sign(item), ...runs]})]),
      ...docxBlocks(draft, more, inside)
    ]
  })
}

/** A check box that nobody can tick is a sign. */
function sign({checked}: ListItem): ParagraphChild[] {
  return typeof checked === 'boolean' ? words(checked ? '☑ ' : '☐ ', {}) : []
}

function codeLines(text: string): ParagraphChild[] {
  return text
    .split('\n')
    .flatMap((line, index) => [...(index === 0 ? [] : [new TextRun({break: 1})]), ...words(line, {})])
}
