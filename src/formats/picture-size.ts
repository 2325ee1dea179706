/** Width and height in pixels. */
export interface PictureSize {
  readonly width: number
  readonly height: number
}

/** The size that an SVG text states at its start; undefined where it states none. */
export function svgSize(svg: string): PictureSize | undefined {
  const [start = ''] = /<svg\b[^>]*>/.exec(svg) ?? []
  const width = Number(/\swidth="([\d.]+)(?:px)?"/.exec(start)?.[1])
  const height = Number(/\sheight="([\d.]+)(?:px)?"/.exec(start)?.[1])
  return width > 0 && height > 0 ? {width, height} : undefined
}

/**
 * The size of a photograph, from its first bytes: PNG (ISO/IEC 15948, chunk IHDR), GIF (GIF89a, logical screen) and
 * JPEG (ISO/IEC 10918-1, frame header). Undefined for anything else.
 */
export function photoSize(bytes: Uint8Array): (PictureSize & {type: 'png' | 'gif' | 'jpg'}) | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.length > 24 && view.getUint32(0) === 0x89504e47)
    return {type: 'png', width: view.getUint32(16), height: view.getUint32(20)}
  if (bytes.length > 10 && view.getUint32(0) === 0x47494638)
    return {type: 'gif', width: view.getUint16(6, true), height: view.getUint16(8, true)}
  return bytes.length > 4 && view.getUint16(0) === 0xffd8 ? jpegSize(view) : undefined
}

function jpegSize(view: DataView): (PictureSize & {type: 'jpg'}) | undefined {
  let at = 2
  while (at + 9 < view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1)
    // C4, C8 and CC are tables; the other markers from C0 to CF begin a frame.
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return {type: 'jpg', width: view.getUint16(at + 7), height: view.getUint16(at + 5)}
    at += marker === 0xff ? 1 : 2 + view.getUint16(at + 2)
  }
  return undefined
}
