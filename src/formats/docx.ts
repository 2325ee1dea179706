import type {Document} from '../report/document.ts'

/** What a word-processor file is made from, besides its document. */
export interface DocxInput {
  readonly document: Document
  /** SVG text of each figure, by the figure's name. */
  readonly pictures: ReadonlyMap<string, string>
  /** PNG of each figure, for programs that show no SVG, by the figure's name. */
  readonly bitmaps: ReadonlyMap<string, Uint8Array>
  /** Photographs that texts show, as `data:` addresses, by the path that the text names. */
  readonly photos?: ReadonlyMap<string, string>
  readonly study: {readonly title: string}
  /** Names of the authors, for the properties of the file. */
  readonly authors?: readonly string[]
  /** Day that the document carries, `2026-03-01`: the date in the properties of the file, which has none without it. */
  readonly issued?: string
  /** Language of the document, `en-GB` where absent. */
  readonly language?: string
}

/**
 * A document for word processors (Office Open XML, ECMA-376): A4, with real styles, captions and cross-references as
 * fields whose words are there already, and table heads that repeat. The same input gives the same bytes.
 *
 * @throws Error when a figure of the document that could be drawn has no picture or no bitmap.
 */
export async function docx(input: DocxInput): Promise<Uint8Array> {
  // Loaded with the first document: the library is large, and most commands do without.
  const {docxFile} = await import('./docx-file.ts')
  return docxFile(input)
}
