/** What a picture is drawn from. Plain data, so that another thread can draw it. */
export interface PictureRequest {
  /** Ends every id inside the picture, so it must be unique on the page: a letter, then letters, digits, - and _. */
  readonly id: string
  /** Vega-Lite specification with its data inline and times in UTC. It is not changed. */
  readonly spec: Readonly<Record<string, unknown>>
  /** The picture's short name, in plain text. */
  readonly title: string
  /** What the picture shows, in sentences, in plain text. */
  readonly description: string
}

/** Who draws pictures: the SVG text of one. The same request gives the same bytes, whoever draws it. */
export type DrawPicture = (request: PictureRequest) => Promise<string>

/** Who draws pictures in place of `inline`, or leaves it to that. */
export type ShareDrawing = (request: PictureRequest, inline: DrawPicture) => Promise<string>
