import {FootnoteReferenceRun, type IRunOptions, type ParagraphChild, TextRun} from 'docx'
import type {FootnoteReference, Nodes, PhrasingContent} from 'mdast'
import {dropXmlControls} from '../svg/drop-xml-controls.ts'
import type {Draft} from './docx-draft.ts'
import {bookmarkWords, LinkOut, linkWithin} from './docx-fields.ts'
import {docxLinkTarget} from './docx-link-target.ts'
import {docxPhoto} from './docx-picture.ts'

/** How words look that stand inside of others: bold within a heading of a table, small in a small one. */
export type Look = Pick<IRunOptions, 'bold' | 'italics' | 'strike' | 'style' | 'size'>

/** Phrasing as runs, fields and links. */
export function docxRuns(draft: Draft, nodes: readonly Nodes[], look: Look = {}): ParagraphChild[] {
  return nodes.flatMap((node) => run(draft, node as PhrasingContent, look))
}

function run(draft: Draft, node: PhrasingContent, look: Look): ParagraphChild[] {
  switch (node.type) {
    case 'text':
      return words(node.value, look)
    case 'emphasis':
      return docxRuns(draft, node.children, {...look, italics: true})
    case 'strong':
      return docxRuns(draft, node.children, {...look, bold: true})
    case 'delete':
      return docxRuns(draft, node.children, {...look, strike: true})
    case 'inlineCode':
      return words(node.value, {...look, style: 'InlineCode'})
    case 'break':
      return [new TextRun({break: 1})]
    case 'image':
      return [docxPhoto(draft, node)]
    case 'link':
      return link(draft, node.url, node.children, look)
    case 'documentLink':
      return link(draft, node.href, node.children, look)
    case 'crossReference': {
      const bookmark = draft.targets.get(node.target)
      const children = docxRuns(draft, node.children, look)
      return bookmark === undefined ? children : [bookmarkWords(bookmark, children)]
    }
    case 'citedWork': {
      const bookmark = draft.works.get(node.key)
      const children = docxRuns(draft, node.children, look)
      return bookmark === undefined ? children : [linkWithin(bookmark, children)]
    }
    case 'footnoteReference':
      return footnoteMark(draft, node)
    default:
      return 'children' in node ? docxRuns(draft, (node as {children: Nodes[]}).children, look) : []
  }
}

/** Text on one line, a number and its per cent sign together. */
export function words(text: string, look: Look): ParagraphChild[] {
  const shown = dropXmlControls(text)
    .replace(/[\t\r\n]+/g, ' ')
    .replace(/(\d) %/g, '$1\u00a0%')
  return shown === '' ? [] : [new TextRun({text: shown, ...look})]
}

function link(draft: Draft, url: string, children: readonly Nodes[], look: Look): ParagraphChild[] {
  const target = docxLinkTarget(url)
  if (target === undefined) return docxRuns(draft, children, look)
  const shown = docxRuns(draft, children, {...look, style: 'Hyperlink'})
  return [new LinkOut(draft.next('link'), target, shown) as ParagraphChild]
}

/** The mark of a footnote. One that is called again shows its number only, for a note stands at one place. */
function footnoteMark({definitions, footnotes}: Draft, {identifier}: FootnoteReference): ParagraphChild[] {
  if (!definitions.has(identifier)) return []
  const known = footnotes.get(identifier)
  if (known !== undefined) return [new TextRun({text: String(known), style: 'FootnoteReference'})]
  footnotes.set(identifier, footnotes.size + 1)
  return [new FootnoteReferenceRun(footnotes.size)]
}
