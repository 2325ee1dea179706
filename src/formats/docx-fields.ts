import {
  BookmarkEnd,
  BookmarkStart,
  BuilderElement,
  ConcreteHyperlink,
  type IContext,
  type IXmlableObject,
  type ParagraphChild,
  TextRun,
  type XmlComponent
} from 'docx'
import {captionBookmark, type Draft} from './docx-draft.ts'

const hyperlinkType = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink'

/** An element that the library has no class for. */
export function element(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  children: readonly XmlComponent[] = []
): XmlComponent {
  const payload = Object.fromEntries(
    Object.entries(attributes).map(([key, value]) => [key, {key, value}] as const)
  )
  return new BuilderElement({name, attributes: payload, children})
}

/** A field with the words that it shows until somebody updates it. */
function field(instruction: string, children: readonly ParagraphChild[]): ParagraphChild {
  return element('w:fldSimple', {'w:instr': ` ${instruction} `}, children as readonly XmlComponent[])
}

/** Content that others can refer to by name. */
export function bookmarked(
  draft: Draft,
  name: string,
  children: readonly ParagraphChild[]
): ParagraphChild[] {
  const id = draft.next('bookmark')
  return [new BookmarkStart(name, id), ...children, new BookmarkEnd(id)]
}

/** 'Table 3' at the head of a caption: the number counts the captions before it, and the whole can be referred to. */
export function captionLabel(draft: Draft, kind: 'Figure' | 'Table', number: number): ParagraphChild[] {
  return bookmarked(draft, captionBookmark(kind, number), [
    new TextRun({text: `${kind} `, bold: true}),
    field(`SEQ ${kind} \\* ARABIC`, [new TextRun({text: String(number), bold: true})])
  ])
}

/** The words of a bookmark, wherever it has moved, in the looks of the place where they stand. */
export function bookmarkWords(name: string, children: readonly ParagraphChild[]): ParagraphChild {
  return field(`REF ${name} \\h \\* MERGEFORMAT`, children)
}

/** A link within the document. */
export function linkWithin(bookmark: string, children: readonly ParagraphChild[]): ParagraphChild {
  return new ConcreteHyperlink(children, '', bookmark) as ParagraphChild
}

/** A link to the outside, under a number of ours: the library's own links have random ones. */
export class LinkOut extends ConcreteHyperlink {
  readonly #target: string

  constructor(number: number, target: string, children: readonly ParagraphChild[]) {
    super(children, `Link${number}`)
    this.#target = target
  }

  override prepForXml(context: IContext): IXmlableObject | undefined {
    context.viewWrapper.Relationships.addRelationship(this.linkId, hyperlinkType, this.#target, 'External')
    return super.prepForXml(context)
  }
}
