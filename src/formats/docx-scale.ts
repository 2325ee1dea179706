/** Sizes in half points, spaces in twentieths of a point, line heights in 240ths of a line. */
export interface Scale {
  readonly title: number
  readonly text: {readonly size: number; readonly after: number; readonly line: number}
  /** The first levels of headings; the others are as the last. */
  readonly headings: readonly {readonly before: number; readonly after: number; readonly size: number}[]
}

/** For a document of many pages that somebody writes remarks on. */
export const bookScale: Scale = {
  title: 42,
  text: {size: 23, after: 140, line: 288},
  headings: [
    {before: 440, after: 140, size: 30},
    {before: 320, after: 100, size: 25},
    {before: 260, after: 80, size: 22},
    {before: 220, after: 60, size: 21}
  ]
}

/** For a leaflet of two pages. */
export const leafletScale: Scale = {
  title: 36,
  text: {size: 21, after: 100, line: 264},
  headings: [
    {before: 220, after: 60, size: 24},
    {before: 180, after: 60, size: 21}
  ]
}
