/** What a colour looks like and how far two of them are apart, for the tests of palettes. */

type Triple = readonly [number, number, number]
type Matrix = readonly [Triple, Triple, Triple]

/** Luminance contrast of two colours, 1 to 21 (WCAG 2.2, definition of contrast ratio). */
export function contrast(one: string, other: string): number {
  const [darker, lighter] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number]
  return (lighter + 0.05) / (darker + 0.05)
}

/**
 * Full colour vision, and vision without long-, middle- or short-wave cones, as matrices on linear RGB.
 * Machado, Oliveira & Fernandes (2009), IEEE Transactions on Visualization and Computer Graphics 15, 1291-1298,
 * severity 1.0; coefficients from memory, checked by their rows, which must add to 1 so that white stays white.
 */
export const colourVisions: Readonly<Record<string, Matrix>> = {
  full: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1]
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998]
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881]
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039]
  ]
}

/**
 * Distance of two colours as seen with the given vision, in hundredths of the Oklab unit (Ottosson 2020, 'A
 * perceptual color space for image processing'; coefficients from memory, checked by white being (1, 0, 0)).
 */
export function distance(one: string, other: string, vision: Matrix): number {
  const [a, b] = [one, other].map((colour) =>
    oklab(multiply(vision, linear(colour)).map(clamp) as unknown as Triple)
  )
  return 100 * Math.hypot(...a!.map((value, index) => value - b![index]!))
}

export function oklab([red, green, blue]: Triple): Triple {
  const cones = multiply(
    [
      [0.4122214708, 0.5363325363, 0.0514459929],
      [0.2119034982, 0.6806995451, 0.1073969566],
      [0.0883024619, 0.2817188376, 0.6299787005]
    ],
    [red, green, blue]
  )
  return multiply(
    [
      [0.2104542553, 0.793617785, -0.0040720468],
      [1.9779984951, -2.428592205, 0.4505937099],
      [0.0259040371, 0.7827717662, -0.808675766]
    ],
    cones.map(Math.cbrt) as unknown as Triple
  )
}

function luminance(colour: string): number {
  const [red, green, blue] = linear(colour)
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

function linear(colour: string): Triple {
  const channel = (start: number): number => {
    const value = Number.parseInt(colour.slice(start, start + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  }
  return [channel(1), channel(3), channel(5)]
}

function multiply(matrix: Matrix, [x, y, z]: Triple): Triple {
  const row = ([a, b, c]: Triple): number => a * x + b * y + c * z
  return [row(matrix[0]), row(matrix[1]), row(matrix[2])]
}

function clamp(value: number): number {
  return Math.min(1, Math.max(0, value))
}
