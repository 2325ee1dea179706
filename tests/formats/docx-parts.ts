import {readFileSync} from 'node:fs'
import {createRequire} from 'node:module'
import {fileURLToPath} from 'node:url'
import {strFromU8, unzipSync} from 'fflate'
import {type DocxInput, docx} from '../../src/formats/docx.ts'
import type {DocumentInput} from '../../src/report/compose-document.ts'
import {composed} from '../report/compose.ts'

/** An element of an XML part, or a piece of its text. */
export interface Node {
  readonly type: string
  readonly name?: string
  readonly text?: string
  readonly attributes?: Readonly<Record<string, string>>
  readonly elements?: readonly Node[]
}

// The strict parser that the library brings along for its own use.
const fromDocx = createRequire(createRequire(import.meta.url).resolve('docx'))
const {xml2js}: {xml2js: (xml: string, options: object) => Node} = fromDocx('xml-js')

const fonts = new URL('../../templates/fonts/', import.meta.url)
export const fontFiles = ['Regular', 'Bold', 'Italic', 'BoldItalic'].map((cut) =>
  fileURLToPath(new URL(`LiberationSans-${cut}.ttf`, fonts))
)

export const svg =
  '<svg xmlns="http://www.w3.org/2000/svg" width="300" height="100" viewBox="0 0 300 100"><title>Effort</title><path d="M0 0h10"/><text x="9" y="9" font-family="Arial, Helvetica, Liberation Sans, sans-serif">Effort</text></svg>'

/** One grey pixel. */
export const png = Uint8Array.from(
  atob('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAG7buVgAAAABJRU5ErkJggg=='),
  (letter) => letter.charCodeAt(0)
)

const names = ['effort', 'rarefaction-carabidae']

/** The bytes of a document of one template. */
export function docxOf(
  text: string,
  more: Partial<DocxInput> = {},
  material: Partial<DocumentInput> = {}
): Promise<Uint8Array> {
  return docx({
    document: composed(text, material).document,
    pictures: new Map(names.map((name) => [name, svg])),
    bitmaps: new Map(names.map((name) => [name, png])),
    study: {title: 'Ash & <Elm>'},
    authors: ['Jane Ash', 'Ö. Elm & Co'],
    issued: '2026-03-01',
    ...more
  })
}

/** The parts of a file by name: the XML ones parsed, which throws where one is not well formed. */
export function partsOf(bytes: Uint8Array): {xml: Map<string, Node>; files: Record<string, Uint8Array>} {
  const files = unzipSync(bytes)
  const xml = new Map(
    Object.entries(files)
      .filter(([name]) => /\.(xml|rels)$/.test(name))
      .map(([name, part]) => [
        name,
        xml2js(strFromU8(part), {compact: false, captureSpacesBetweenElements: true})
      ])
  )
  return {xml, files}
}

/** The body of a document, and all its elements of a name. */
export async function bodyOf(text: string, material: Partial<DocumentInput> = {}): Promise<Node> {
  return partsOf(await docxOf(text, {}, material)).xml.get('word/document.xml')!
}

/** All elements of a name inside of a node, in the order of the text. */
export function all(node: Node, name: string): Node[] {
  return (node.elements ?? []).flatMap((child) => [
    ...(child.name === name ? [child] : []),
    ...all(child, name)
  ])
}

/** The words that a node shows. */
export function wordsIn(node: Node): string {
  if (node.name === 'w:t') return (node.elements ?? []).map(({text = ''}) => text).join('')
  return (node.elements ?? []).map(wordsIn).join('')
}

export function attribute(node: Node | undefined, name: string): string | undefined {
  return node?.attributes?.[name]
}

/** The value that a property element such as `w:pStyle` has within a node. */
export function settingOf(node: Node, name: string): string | undefined {
  return attribute(all(node, name)[0], 'w:val')
}

/** Everything that a document can hold, with text that tries to break out. */
export const everything = readFileSync(new URL('docx-everything.md', import.meta.url), 'utf8')
