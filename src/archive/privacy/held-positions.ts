import type {StudySource} from '../../model/source.ts'

/** Files that are positions and nothing else, by the names that receivers and map programs give them. */
const tracks = /\.(gpx|kml|kmz|geojson|gpkg|shp|fit|tcx|nmea)$/i
const pictures = /\.(jpe?g|png|webp|gif|heic|heif|avif|tiff?|dng)$/i

/** Whether a file is nothing but positions by its name. */
export function isTrack(path: string): boolean {
  return tracks.test(path)
}

export function isPicture(path: string): boolean {
  return pictures.test(path)
}

/**
 * What announces the place where a picture was taken: the tag GPSInfo (0x8825, one long number) of an Exif directory
 * in either byte order (JEITA CP-3451, section 4.6.3), and its name in XMP.
 */
const marks = [
  [0x88, 0x25, 0x00, 0x04, 0x00, 0x00, 0x00, 0x01],
  [0x25, 0x88, 0x04, 0x00, 0x01, 0x00, 0x00, 0x00],
  [...'GPSLatitude'].map((letter) => letter.charCodeAt(0))
] as const

/** Whether the bytes of a picture say where it was taken, wherever in it that stands. */
export function holdsPosition(bytes: Uint8Array): boolean {
  return marks.some((mark) => {
    const first = mark[0]!
    for (let at = bytes.indexOf(first); at !== -1; at = bytes.indexOf(first, at + 1))
      if (mark.every((byte, index) => bytes[at + index] === byte)) return true
    return false
  })
}

/** Pictures of a study that say where they were taken. */
export async function placedPictures(
  source: StudySource,
  paths: readonly string[]
): Promise<readonly string[]> {
  const placed: string[] = []
  for (const path of paths) if (isPicture(path) && (await tellsPlace(source.read(path)))) placed.push(path)
  return placed
}

/** The same of a picture that comes in chunks: what announces a place may begin in one and end in the next. */
export async function tellsPlace(chunks: AsyncIterable<Uint8Array> | Iterable<Uint8Array>): Promise<boolean> {
  const longest = Math.max(...marks.map(({length}) => length))
  let rest: Uint8Array = new Uint8Array()
  for await (const chunk of chunks) {
    const bytes = new Uint8Array(rest.length + chunk.length)
    bytes.set(rest)
    bytes.set(chunk, rest.length)
    if (holdsPosition(bytes)) return true
    rest = bytes.subarray(-longest)
  }
  return false
}
