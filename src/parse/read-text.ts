import type {StudySource} from '../model/source.ts'
import {decodeText, encodingOfStart, NotUtf8} from './decode-text.ts'

/** A whole text file as one string, line endings unified; Windows-1252 where it is not UTF-8. */
export async function readText(source: StudySource, file: string): Promise<string> {
  let start: Uint8Array = new Uint8Array()
  for await (const bytes of source.read(file)) {
    start = bytes
    break
  }
  try {
    return await joined(decodeText(source.read(file), encodingOfStart(start)))
  } catch (error) {
    if (!(error instanceof NotUtf8)) throw error
    return joined(decodeText(source.read(file), 'windows-1252'))
  }
}

async function joined(chunks: AsyncIterable<string>): Promise<string> {
  let text = ''
  for await (const chunk of chunks) text += chunk
  return text
}
