/** From one corner or end to the other, in pixels from the upper left corner of the plot. */
export interface PixelSpan {
  readonly x: number
  readonly y: number
  readonly x2: number
  readonly y2: number
}

/** A layer of lines or boxes at places in pixels, which need no scale. */
export function pixelMarks(
  type: 'rule' | 'rect',
  values: readonly PixelSpan[],
  look: Readonly<Record<string, unknown>>
): Record<string, unknown> {
  const across = (field: 'x' | 'y') => ({field, type: 'quantitative', scale: null, axis: null})
  return {
    data: {values},
    mark: {type, ...look},
    encoding: {x: across('x'), x2: {field: 'x2'}, y: across('y'), y2: {field: 'y2'}}
  }
}
