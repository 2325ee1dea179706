import type {PictureSize} from './picture-size.ts'

/** Sizes in half points, spaces in twentieths of a point, line heights in 240ths of a line. */
export interface Scale {
  readonly title: number
  readonly text: {readonly size: number; readonly after: number; readonly line: number}
  /** The first levels of headings; the others are as the last. */
  readonly headings: readonly {readonly before: number; readonly after: number; readonly size: number}[]
  /** The most that a picture may take, in pixels of 1/96 inch. */
  readonly picture: PictureSize
  /** Below the caption of a picture. */
  readonly afterFigure: number
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
  ],
  // The text area of an upright page, with room for a caption of some lines.
  picture: {width: 604, height: 820},
  afterFigure: 280
}

/** For a leaflet of two pages. */
export const leafletScale: Scale = {
  title: 34,
  text: {size: 20, after: 70, line: 246},
  headings: [
    {before: 160, after: 40, size: 23},
    {before: 130, after: 40, size: 20}
  ],
  picture: {width: 604, height: 150},
  afterFigure: 120
}
