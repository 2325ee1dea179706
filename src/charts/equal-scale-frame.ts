import type {Pixel} from './place-labels.ts'

export interface FrameSize {
  readonly width: number
  readonly leastHeight: number
  readonly mostHeight: number
  /** Pixels between the outermost points and the edge. */
  readonly margin: number
}

/** A plot in which one unit is as long on one axis as on the other. */
export interface EqualScaleFrame {
  readonly width: number
  readonly height: number
  readonly perPixel: number
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
  toPixel(x: number, y: number): Pixel
  fromPixel(pixel: Pixel): Pixel
}

/** The frame that shows all points as large as it can; y grows upwards, pixels downwards. */
export function equalScaleFrame(
  points: readonly {readonly x: number; readonly y: number}[],
  {width, leastHeight, mostHeight, margin}: FrameSize
): EqualScaleFrame {
  const [x, y] = [extent(points.map((point) => point.x)), extent(points.map((point) => point.y))]
  const room = width - 2 * margin
  const height = Math.min(mostHeight, Math.max(leastHeight, (room * y.span) / (x.span || 1) + 2 * margin))
  const perPixel = Math.max(x.span / room, y.span / (height - 2 * margin)) || 0.01
  const left = x.middle - (width / 2) * perPixel
  const top = y.middle + (height / 2) * perPixel
  return {
    width,
    height,
    perPixel,
    x: [left, left + width * perPixel],
    y: [top - height * perPixel, top],
    toPixel: (across, up) => ({x: (across - left) / perPixel, y: (top - up) / perPixel}),
    fromPixel: (pixel) => ({x: left + pixel.x * perPixel, y: top - pixel.y * perPixel})
  }
}

function extent(values: readonly number[]): {readonly middle: number; readonly span: number} {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return {middle: (low + high) / 2, span: high - low}
}
