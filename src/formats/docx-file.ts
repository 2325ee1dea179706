import {
  Footer,
  type ISectionOptions,
  Packer,
  PageNumber,
  PageOrientation,
  Paragraph,
  SectionType,
  TextRun,
  Document as WordDocument
} from 'docx'
import type {RootContent} from 'mdast'
import {dropXmlControls} from '../svg/drop-xml-controls.ts'
import type {DocxInput} from './docx.ts'
import {docxBlocks, inFootnote} from './docx-blocks.ts'
import {docxBytes} from './docx-bytes.ts'
import {type Draft, newDraft} from './docx-draft.ts'
import {docxNumbering} from './docx-lists.ts'
import {docxRuns} from './docx-runs.ts'
import {bookScale, leafletScale} from './docx-scale.ts'
import {docxStyles} from './docx-styles.ts'
import type {Piece} from './docx-table.ts'
import {linkAddresses} from './link-addresses.ts'
import {pageKind} from './page-kind.ts'

/** A4, its margins and those of a leaflet, in twentieths of a point. */
const page = {width: 11906, height: 16838, margin: 1417, leafletMargin: 1134, foot: 700}

/** The whole file: see `docx`, which loads this one on demand. */
export async function docxFile(input: DocxInput): Promise<Uint8Array> {
  const {document, study, authors = [], issued, language = 'en-GB'} = input
  const isLeaflet = pageKind(document.name) === 'site'
  const tree = linkAddresses(document.tree)
  const scale = isLeaflet ? leafletScale : bookScale
  const draft = newDraft({...input, document: {...document, tree}}, scale)
  const pieces = body(draft, tree.children)
  const footnotes = footnoteTexts(draft)
  const creator = oneLine(authors.join(', ')) || 'pitfolio'
  const file = new WordDocument({
    title: oneLine(document.title),
    subject: oneLine(study.title),
    creator,
    lastModifiedBy: creator,
    styles: {importedStyles: docxStyles(language, scale)},
    numbering: docxNumbering([...draft.listStarts]),
    footnotes,
    sections: sections(pieces, footer(oneLine(document.title)), isLeaflet ? page.leafletMargin : page.margin)
  })
  const packed = await Packer.toArrayBuffer(file)
  return docxBytes(new Uint8Array(packed), {language, ...(issued !== undefined && {issued})})
}

/** The first heading of a document is its title. */
function body(draft: Draft, nodes: readonly RootContent[]): Piece[] {
  const [first, ...rest] = nodes
  if (first?.type !== 'heading') return docxBlocks(draft, nodes)
  const title = new Paragraph({style: 'Title', children: docxRuns(draft, first.children)})
  return [{blocks: [title], landscape: false}, ...docxBlocks(draft, rest)]
}

/** The notes in the order of their first calls; a note may itself call others. */
function footnoteTexts(draft: Draft): Record<string, {children: Paragraph[]}> {
  const texts: Record<string, {children: Paragraph[]}> = {}
  for (const [identifier, number] of draft.footnotes) {
    const blocks = docxBlocks(draft, draft.definitions.get(identifier)?.children ?? [], inFootnote)
    const paragraphs = blocks.flatMap((piece) => piece.blocks).filter((block) => block instanceof Paragraph)
    texts[number] = {children: paragraphs.length > 0 ? paragraphs : [new Paragraph({style: 'FootnoteText'})]}
  }
  return texts
}

/** Pieces side by side of one kind share a section; headings right before a sideways table go with it. */
function sections(pieces: readonly Piece[], foot: Footer, margin: number): ISectionOptions[] {
  const grouped: {landscape: boolean; blocks: Piece['blocks'][number][]}[] = []
  for (const [index, {blocks, landscape}] of pieces.entries()) {
    const next = pieces.slice(index).find(({isHeading}) => isHeading !== true)
    const isSideways = next?.landscape ?? landscape
    const last = grouped.at(-1)
    if (last?.landscape === isSideways) last.blocks.push(...blocks)
    else grouped.push({landscape: isSideways, blocks: [...blocks]})
  }
  if (grouped.length === 0) grouped.push({landscape: false, blocks: [new Paragraph({style: 'BodyText'})]})
  return grouped.map(({landscape, blocks}, index) => ({
    properties: {
      type: SectionType.NEXT_PAGE,
      page: {
        size: {
          width: page.width,
          height: page.height,
          orientation: landscape ? PageOrientation.LANDSCAPE : PageOrientation.PORTRAIT
        },
        margin: {top: margin, right: margin, bottom: margin, left: margin, footer: page.foot}
      }
    },
    // Later sections go on with the foot of the one before.
    ...(index === 0 && {footers: {default: foot}}),
    children: blocks
  }))
}

function footer(title: string): Footer {
  const counted = [' · page ', PageNumber.CURRENT, ' of ', PageNumber.TOTAL_PAGES]
  return new Footer({
    children: [new Paragraph({style: 'Footer', children: [new TextRun({children: [title, ...counted]})]})]
  })
}

function oneLine(text: string): string {
  return dropXmlControls(text).replace(/\s+/g, ' ').trim()
}
