/**
 * A picture without what cameras and programs write beside it (place, owner, comments), its pixels untouched. JPEG:
 * segments APP1, APP3 to APP13, APP15 and COM go, but for the way up, which is written anew (ISO/IEC 10918-1;
 * JEITA CP-3451, tag 0x0112), and so does what follows the end of the picture, such as a second one. PNG: chunks of
 * text and Exif (ISO/IEC 15948). WebP: chunks EXIF and XMP (RFC 9649). Other kinds, and what cannot be followed to its
 * end, are left as they are.
 */
export function withoutMetadata(type: string, bytes: Uint8Array): Uint8Array {
  switch (type) {
    case 'image/jpeg':
      return jpeg(bytes)
    case 'image/png':
      return png(bytes)
    case 'image/webp':
      return webp(bytes)
    default:
      return bytes
  }
}

function jpeg(bytes: Uint8Array): Uint8Array {
  const view = viewOf(bytes)
  const kept: Uint8Array[] = []
  let wayUp = 1
  let at = 2
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const marker = view.getUint8(at + 1)
    // The pixels begin: all after this belongs to them.
    if (marker === 0xda) break
    const end = at + 2 + view.getUint16(at + 2)
    const isComment = marker === 0xfe
    const isApplication = marker >= 0xe0 && marker <= 0xef && ![0xe0, 0xe2, 0xee].includes(marker)
    if (marker === 0xe1) wayUp = wayUpOf(bytes.subarray(at + 4, end)) ?? wayUp
    if (!isComment && !isApplication) kept.push(bytes.subarray(at, end))
    at = end
  }
  const orientation = wayUp === 1 ? [] : [exifOf(wayUp)]
  return joined([bytes.subarray(0, 2), ...orientation, ...kept, bytes.subarray(at, endOfJpeg(bytes, at))])
}

/** Past the end marker (EOI) of a picture whose first scan begins at `at`; all there is where none is found. */
function endOfJpeg(bytes: Uint8Array, at: number): number {
  const view = viewOf(bytes)
  let place = at
  while (place + 4 <= bytes.length) {
    const marker = view.getUint8(place + 1)
    if (marker === 0xd9) return place + 2
    place += 2 + view.getUint16(place + 2)
    // Pixels run on to the next marker: FF 00 is a pixel of value FF, FF D0 to D7 only restart the decoder.
    while (marker === 0xda && place + 1 < bytes.length && !isMarkerAt(bytes, place)) place += 1
  }
  return bytes[place] === 0xff && bytes[place + 1] === 0xd9 ? place + 2 : bytes.length
}

function isMarkerAt(bytes: Uint8Array, place: number): boolean {
  const marker = bytes[place + 1] ?? 0
  return bytes[place] === 0xff && marker !== 0 && marker !== 0xff && !(marker >= 0xd0 && marker <= 0xd7)
}

/** The way up that an Exif segment states, 2 to 8; undefined where it states none. */
function wayUpOf(segment: Uint8Array): number | undefined {
  if (latin(segment.subarray(0, 6)) !== 'Exif\0\0' || segment.length < 20) return undefined
  const tiff = segment.subarray(6)
  const view = viewOf(tiff)
  const little = view.getUint16(0) === 0x4949
  const first = view.getUint32(4, little)
  if (first + 2 > tiff.length) return undefined
  const entries = view.getUint16(first, little)
  for (let entry = first + 2; entry < first + 2 + entries * 12 && entry + 12 <= tiff.length; entry += 12) {
    if (view.getUint16(entry, little) !== 0x0112) continue
    const value = view.getUint16(entry + 8, little)
    return value >= 2 && value <= 8 ? value : undefined
  }
  return undefined
}

/** An Exif segment that states the way up and nothing else. */
function exifOf(wayUp: number): Uint8Array {
  const exif = [0x45, 0x78, 0x69, 0x66, 0, 0]
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, wayUp, 0, 0, 0, 0, 0, 0]
  return Uint8Array.from([0xff, 0xe1, 0, 2 + exif.length + tiff.length, ...exif, ...tiff])
}

function png(bytes: Uint8Array): Uint8Array {
  const kept: Uint8Array[] = [bytes.subarray(0, 8)]
  let at = 8
  while (at + 12 <= bytes.length) {
    const end = at + 12 + viewOf(bytes).getUint32(at)
    const kind = latin(bytes.subarray(at + 4, at + 8))
    if (!['tEXt', 'zTXt', 'iTXt', 'eXIf', 'tIME'].includes(kind)) kept.push(bytes.subarray(at, end))
    at = end
    if (kind === 'IEND') return joined(kept)
  }
  return joined([...kept, bytes.subarray(at)])
}

function webp(bytes: Uint8Array): Uint8Array {
  const kept: Uint8Array[] = [bytes.slice(0, 12)]
  let at = 12
  while (at + 8 <= bytes.length) {
    const size = viewOf(bytes).getUint32(at + 4, true)
    const end = at + 8 + size + (size % 2)
    const kind = latin(bytes.subarray(at, at + 4))
    const chunk = bytes.slice(at, end)
    // The flags of Exif and XMP in the extended head.
    if (kind === 'VP8X') chunk[8] = (chunk[8] ?? 0) & ~0b1100
    if (kind !== 'EXIF' && kind !== 'XMP ') kept.push(chunk)
    at = end
  }
  const all = joined(kept)
  viewOf(all).setUint32(4, all.length - 8, true)
  return all
}

function latin(bytes: Uint8Array): string {
  return String.fromCharCode(...bytes)
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    all.set(part, at)
    at += part.length
  }
  return all
}
