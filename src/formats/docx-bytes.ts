import {strFromU8, strToU8, unzipSync, type Zippable, zipSync} from 'fflate'

/** What the properties of the file say of its time and language. */
export interface DocxStamp {
  readonly issued?: string
  readonly language: string
}

/** Zip files tell the time of each entry in local time and cannot tell none: the first day that they can tell. */
const noTime = new Date(1980, 0, 1)

/**
 * The packed file with nothing in it that depends on when and where it was packed: the library writes the present
 * time into the properties and into every entry of the zip file.
 */
export function docxBytes(packed: Uint8Array, stamp: DocxStamp): Uint8Array {
  const parts = unzipSync(packed)
  const entries: Zippable = {}
  for (const name of Object.keys(parts).sort(inPackageOrder)) {
    // A folder is no part of such a file, though the library writes some.
    if (name.endsWith('/')) continue
    const level = /\.(png|jpg|gif)$/.test(name) ? 0 : 6
    entries[name] = [edited(name, parts[name]!, stamp), {level, mtime: noTime, os: 3, attrs: 0o644 << 16}]
  }
  return zipSync(entries)
}

/** The list of types comes first, for programs that tell the kind of file by its first entry. */
function inPackageOrder(a: string, b: string): number {
  const rank = (name: string) => (name === '[Content_Types].xml' ? 0 : name === '_rels/.rels' ? 1 : 2)
  return rank(a) - rank(b) || (a < b ? -1 : 1)
}

function edited(name: string, bytes: Uint8Array, stamp: DocxStamp): Uint8Array {
  if (name === 'docProps/core.xml') return strToU8(stamped(strFromU8(bytes), stamp))
  if (name === 'word/document.xml') return strToU8(withoutSectionParagraphs(strFromU8(bytes)))
  return bytes
}

function stamped(xml: string, {issued, language}: DocxStamp): string {
  return xml
    .replace(/(<dcterms:(created|modified)\b[^>]*>)[^<]*(<\/dcterms:\2>)/g, (_, start, __, end) =>
      issued === undefined ? '' : `${start}${issued}T00:00:00Z${end}`
    )
    .replace('</cp:coreProperties>', `<dc:language>${language}</dc:language></cp:coreProperties>`)
}

/**
 * The library ends a section with an empty paragraph, which can fall on a page of its own. The end of the section is
 * moved into the last paragraph of its text.
 */
function withoutSectionParagraphs(xml: string): string {
  const [first = '', ...others] = xml.split('<w:p><w:pPr><w:sectPr')
  return others.reduce((before, after) => {
    const end = after.indexOf('</w:pPr></w:p>')
    const section = `<w:sectPr${after.slice(0, end)}`
    const rest = after.slice(end + '</w:pPr></w:p>'.length)
    const place = before.lastIndexOf('</w:pPr>')
    return `${before.slice(0, place)}${section}${before.slice(place)}${rest}`
  }, first)
}
