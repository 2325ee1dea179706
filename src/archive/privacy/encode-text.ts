/** Signs of Windows-1252 that stand at 0x80 to 0x9f there, in their order; those that it does not define are blank. */
const windows1252 = '€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ'

/** Text as bytes in the encoding that its file had, so that a setting of study.yaml stays true. */
export function encodeText(text: string, encoding: string): Uint8Array {
  switch (encoding) {
    case 'utf-16le':
    case 'utf-16be':
      return utf16(text, encoding === 'utf-16le')
    case 'windows-1252':
      return Uint8Array.from(text, byteOf)
    default:
      return new TextEncoder().encode(text)
  }
}

/** The byte-order mark that a file in UTF-16 begins with. */
export function startOf(encoding: string): string {
  return encoding.startsWith('utf-16') ? '\ufeff' : ''
}

function utf16(text: string, littleEndian: boolean): Uint8Array {
  const bytes = new Uint8Array(text.length * 2)
  const view = new DataView(bytes.buffer)
  for (let index = 0; index < text.length; index++)
    view.setUint16(index * 2, text.charCodeAt(index), littleEndian)
  return bytes
}

function byteOf(sign: string): number {
  const code = sign.codePointAt(0) ?? 0
  const special = sign === ' ' ? -1 : windows1252.indexOf(sign)
  if (special >= 0) return 0x80 + special
  return code < 0x100 ? code : 0x3f
}
