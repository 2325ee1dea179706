/** Small pictures for tests, some with what a camera writes beside them. */

function bytesOf(...parts: readonly (string | readonly number[])[]): Uint8Array {
  return Uint8Array.from(
    parts.flatMap((part) => (typeof part === 'string' ? [...part].map((sign) => sign.charCodeAt(0)) : part))
  )
}

/** A PNG of one grey pixel. */
export const png = Uint8Array.from(
  atob('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg=='),
  (letter) => letter.charCodeAt(0)
)

/** The same with a chunk of text before the end. */
export const pngWithText = Uint8Array.from([
  ...png.subarray(0, png.length - 12),
  ...bytesOf([0, 0, 0, 12], 'tEXt', 'GPS\0 51.12345', [0, 0, 0, 0]).subarray(0, 24),
  ...png.subarray(png.length - 12)
])

const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0]

/** The head of a JPEG, 4 by 3, with Exif (right side up when turned), a comment, an ICC profile and pixels. */
export const jpegWithPlace = bytesOf(
  [0xff, 0xd8],
  [0xff, 0xe1, 0, 2 + 6 + tiff.length + 12],
  'Exif\0\0',
  tiff,
  'GPS 51.12345',
  [0xff, 0xfe, 0, 6],
  'BOO!',
  [0xff, 0xe2, 0, 5],
  'ICC',
  [0xff, 0xc0, 0, 11, 8, 0, 3, 0, 4, 1, 1, 17, 0],
  [0xff, 0xda, 0, 2, 1, 2, 3, 0xff, 0xd9]
)

export const webpWithPlace = bytesOf(
  'RIFF',
  [44, 0, 0, 0],
  'WEBP',
  'VP8X',
  [10, 0, 0, 0, 0b1100, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  'EXIF',
  [3, 0, 0, 0],
  'GPS',
  [0],
  'VP8 ',
  [2, 0, 0, 0, 7, 7]
)

export const gif = bytesOf('GIF89a', [1, 0, 1, 0, 0, 0, 0, 0x3b])

export const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1')
