import type {StudySource} from '../model/source.ts'
import {encodingOfStart} from './decode-text.ts'

/** A file that is no plain text, whatever its name says: what it is, and how its table becomes text. */
export interface ForeignFile {
  readonly what: string
  readonly remedy: string
}

const spreadsheet =
  'open it in your spreadsheet program and save each sheet that you need as CSV, text that is; giving the file another name does not turn it into one'
const numbers = 'open it in Numbers and choose File, Export To, CSV'
const plainText =
  'open it in the program that made it and save it as plain text, under the name that it has here'

/** How much of a file is looked at: a zip archive names its first entries here. */
const looked = 4096

/** What the first bytes of a file betray, or undefined where it may well be text. */
export function foreignFile(start: Uint8Array): ForeignFile | undefined {
  const text = Buffer.from(start.subarray(0, looked)).toString('latin1')
  if (text.startsWith('PK\u0003\u0004')) return archived(Buffer.from(start).toString('latin1'))
  if (text.startsWith('\u00d0\u00cf\u0011\u00e0'))
    return {what: 'a workbook of an old Excel (or another old office file)', remedy: spreadsheet}
  if (text.startsWith('%PDF-'))
    return {what: 'a PDF', remedy: 'save the table as CSV from the program in which it was made'}
  if (text.startsWith('{\\rtf')) return {what: 'a text document with formatting (RTF)', remedy: plainText}
  if (/^(\u00ef\u00bb\u00bf)?\s*<(\?xml|!doctype|html|table)/i.test(text))
    return {what: 'a web page or XML', remedy: spreadsheet}
  const zeros = text.split('\u0000').length - 1
  // UTF-16 has zeros in every other byte and is text; it has been recognised before this is asked.
  return zeros * 10 > text.length ? {what: 'no text', remedy: spreadsheet} : undefined
}

function archived(text: string): ForeignFile {
  if (text.includes('opendocument.spreadsheet'))
    return {what: 'a LibreOffice workbook (.ods)', remedy: spreadsheet}
  if (/Index\/|\.iwa/.test(text)) return {what: 'a workbook of Numbers', remedy: numbers}
  if (/word\/|opendocument\.text/.test(text))
    return {what: 'a document of a word processor', remedy: plainText}
  return /xl\//.test(text)
    ? {what: 'an Excel workbook (.xlsx)', remedy: spreadsheet}
    : {what: 'a zip archive', remedy: 'unpack it and put the file that is in it here'}
}

/** What the first bytes of a file of the study betray. */
export async function foreignStart(source: StudySource, file: string): Promise<ForeignFile | undefined> {
  for await (const bytes of source.read(file))
    if (bytes.length > 0) return encodingOfStart(bytes).startsWith('utf-16') ? undefined : foreignFile(bytes)
  return undefined
}
