import iconv from 'iconv-lite'

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252'

/** Thrown while streaming when bytes are not UTF-8 after all; the reader then starts over with Windows-1252. */
export class NotUtf8 extends Error {}

/**
 * Encoding by evidence from the first bytes: a byte-order mark decides; else zero bytes betray UTF-16; else it is
 * taken for UTF-8 until a byte proves otherwise.
 */
export function encodingOfStart(bytes: Uint8Array): Encoding {
  const [first, second] = bytes
  if (first === 0xff && second === 0xfe) return 'utf-16le'
  if (first === 0xfe && second === 0xff) return 'utf-16be'
  const sample = bytes.subarray(0, 400)
  let evenZeros = 0
  let oddZeros = 0
  for (let index = 0; index < sample.length; index++) {
    if (sample[index] === 0) index % 2 === 0 ? evenZeros++ : oddZeros++
  }
  const many = sample.length / 5
  if (oddZeros > many && evenZeros === 0) return 'utf-16le'
  if (evenZeros > many && oddZeros === 0) return 'utf-16be'
  return 'utf-8'
}

/** Chunks of bytes to chunks of text, without byte-order mark, with every line ending as `\n`. */
export async function* decodeText(
  chunks: AsyncIterable<Uint8Array>,
  encoding: Encoding
): AsyncIterable<string> {
  const decoder = decoderFor(encoding)
  let heldReturn = false
  for await (const bytes of chunks) {
    let text = decoder.write(bytes)
    if (heldReturn) text = `\r${text}`
    // A carriage return at the end of a chunk may be half of a line ending: hold it back.
    heldReturn = text.endsWith('\r')
    if (heldReturn) text = text.slice(0, -1)
    if (text !== '') yield unifyLineEndings(text)
  }
  const rest = `${heldReturn ? '\r' : ''}${decoder.end()}`
  if (rest !== '') yield unifyLineEndings(rest)
}

function unifyLineEndings(text: string): string {
  return text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text
}

interface Decoder {
  write(bytes: Uint8Array): string
  end(): string
}

function decoderFor(encoding: Encoding): Decoder {
  // Node's own Windows-1252 decodes 0x80 to 0x9F as Latin-1 (no euro sign, no curly quotes), hence iconv-lite.
  if (encoding === 'windows-1252') {
    const decoder = iconv.getDecoder('win1252')
    return {write: (bytes) => decoder.write(bytes as Buffer), end: () => decoder.end() ?? ''}
  }
  const decoder = new TextDecoder(encoding, {fatal: encoding === 'utf-8'})
  const guard = (decode: () => string): string => {
    try {
      return decode()
    } catch {
      throw new NotUtf8()
    }
  }
  return {
    write: (bytes) => guard(() => decoder.decode(bytes, {stream: true})),
    end: () => guard(() => decoder.decode())
  }
}
