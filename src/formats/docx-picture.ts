import {ImageRun, Paragraph, type ParagraphChild, TextRun} from 'docx'
import type {Image, PhrasingContent} from 'mdast'
import type {FigureBlock} from '../report/document.ts'
import {plainText} from '../report/plain-text.ts'
import type {Draft} from './docx-draft.ts'
import {captionLabel} from './docx-fields.ts'
import {bookScale} from './docx-scale.ts'
import {type PictureSize, photoSize, svgSize} from './picture-size.ts'

/** A numbered figure and its caption below. A figure that could not be drawn says why. */
export function docxFigure(
  draft: Draft,
  {name, number, figure, children}: FigureBlock,
  phrase: (children: readonly PhrasingContent[]) => ParagraphChild[]
): Paragraph[] {
  const caption = new Paragraph({
    style: 'Caption',
    spacing: {after: draft.scale.afterFigure},
    keepLines: true,
    children: [...captionLabel(draft, 'Figure', number), new TextRun(' '), ...phrase(children)]
  })
  if (figure.spec === undefined) {
    const reason = `Not drawn, because ${plainText(figure.notDrawn ?? 'there is nothing to draw')}.`
    return [new Paragraph({style: 'Figure', children: [new TextRun({text: reason, italics: true})]}), caption]
  }
  const svg = draft.input.pictures.get(name)
  const png = draft.input.bitmaps.get(name)
  const size = svg === undefined ? undefined : svgSize(svg)
  if (svg === undefined || png === undefined || size === undefined)
    throw new Error(`Figure ${name}: no picture to put into the document`)
  const id = draft.next('picture')
  const picture = new ImageRun({
    type: 'svg',
    data: new TextEncoder().encode(svg),
    fallback: {type: 'png', data: png},
    transformation: fitted(size, draft.scale.picture),
    altText: {
      id: String(id),
      name: `Figure ${number}`,
      title: plainText(figure.title),
      description: plainText(figure.alternative)
    }
  })
  return [new Paragraph({style: 'Figure', children: [picture]}), caption]
}

/** A photograph of the study folder; its words where its data are not at hand or of a kind not known. */
export function docxPhoto(draft: Draft, {url, alt, title}: Image): ParagraphChild {
  const bytes = dataOf(draft.input.photos?.get(url))
  const photo = bytes === undefined ? undefined : photoSize(bytes)
  if (bytes === undefined || photo === undefined)
    return new TextRun({text: `[Picture: ${plainText(alt || url)}]`, italics: true})
  const id = draft.next('picture')
  return new ImageRun({
    type: photo.type,
    data: bytes,
    transformation: fitted(photo, bookScale.picture),
    altText: {
      id: String(id),
      name: `Picture ${id}`,
      title: plainText(title ?? ''),
      description: plainText(alt || url)
    }
  })
}

/** As large as drawn, or smaller where there is less room. */
function fitted({width, height}: PictureSize, most: PictureSize): PictureSize {
  const factor = Math.min(1, most.width / width, most.height / height)
  return {width: width * factor, height: height * factor}
}

function dataOf(address: string | undefined): Uint8Array | undefined {
  const [, base64] = /^data:[^,]*;base64,(.*)$/s.exec(address ?? '') ?? []
  return base64 === undefined ? undefined : Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
}
