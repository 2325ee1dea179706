import type {Results} from '../model/results.ts'

/** A picture ready to draw: what it shows, in a Vega-Lite specification, in words and in numbers. */
export interface Figure {
  /** File name without ending, for example `rarefaction-carabidae`. */
  readonly name: string
  /** Short title for the picture's own <title>. */
  readonly title: string
  /** What the picture shows and what stands out, in sentences, from the numbers that it shows. */
  readonly alternative: string
  /** Vega-Lite specification with its data inline; absent when there is nothing to draw. */
  readonly spec?: Readonly<Record<string, unknown>>
  /** Why there is no picture: completes 'not drawn, because ...'. */
  readonly notDrawn?: string
  readonly data: FigureData
}

/** The numbers behind a picture, as they stand in figures/<name>.csv. */
export interface FigureData {
  readonly columns: readonly string[]
  readonly rows: readonly (readonly (string | number | null)[])[]
}

export interface Chart {
  /** Name that templates call. */
  readonly name: string
  /** One line for the list of charts in the season record. */
  readonly summary: string
  /** The pictures of this chart: one, or one for each scope (then named `<chart>-<scope id>`). */
  figures(results: Results): readonly Figure[]
}
