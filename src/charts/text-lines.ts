/** A line of lettering, to be drawn at its own offset from the place of the whole label. */
export interface TextLine {
  readonly text: string
  /** Pixels below the middle (or the bottom) of the label. */
  readonly dy: number
}

/** Distance between the base lines of chart text of 11 px. */
export const lineHeight = 13

/** Pixels that a letter of chart text of 11 px takes, on average and in a wide font. */
export const letterWidth = 6.2
export const boldLetterWidth = 6.9

/**
 * The lines of a wrapped label, each as a datum of its own: the middle of all lines, or the bottom of the last one,
 * lies at the label's place.
 */
export function textLines(wrapped: string, anchor: 'middle' | 'bottom'): readonly TextLine[] {
  const lines = wrapped.split('\n')
  const last = (lines.length - 1) * lineHeight
  const start = anchor === 'middle' ? -last / 2 : -last
  return lines.map((text, index) => ({text, dy: start + index * lineHeight}))
}

/** Properties of a text mark whose data are text lines. */
export const lineMark = {type: 'text', dy: {expr: 'datum.dy'}} as const
