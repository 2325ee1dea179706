/** How one habitat looks in every chart and on every page. */
export interface HabitatStyle {
  /** `#rrggbb`, for marks only: lettering stays in ink, because 3:1 is enough for a mark and too little for text. */
  readonly colour: string
  /** A symbol as SVG path data within the square from -1 to 1, filled or open. */
  readonly shape: string
  /** Lengths of dash and gap in pixels; empty for a solid line. */
  readonly dash: readonly number[]
}

/**
 * Eight colours, in the order in which habitats receive them. Each has a contrast of at least 3:1 against white
 * and against the dark page (WCAG 2.2, success criterion 1.4.11). That leaves a narrow band of lightness; within
 * it they were searched for the largest smallest difference, for full colour vision and with each of the three
 * cone types missing, so that the first ones, which every study uses, are the furthest apart.
 */
const colours = [
  '#1866cc',
  '#d87800',
  '#b43c78',
  '#9c8aae',
  '#7e6618',
  '#669c6c',
  '#0096f0',
  '#72669c'
] as const

/** Eight symbols of about equal area; no two are turned or mirrored copies that small print would confuse. */
const shapes = [
  /* disc */ 'M0.85,0A0.85,0.85,0,1,1,-0.85,0A0.85,0.85,0,1,1,0.85,0Z',
  /* triangle, point up */ 'M0,-1.05L1.1,0.85L-1.1,0.85Z',
  /* square */ 'M-0.75,-0.75H0.75V0.75H-0.75Z',
  /* diamond */ 'M0,-1.1L0.9,0L0,1.1L-0.9,0Z',
  /* upright cross */ 'M-0.35,-1H0.35V-0.35H1V0.35H0.35V1H-0.35V0.35H-1V-0.35H-0.35Z',
  /* triangle, point down */ 'M0,1.05L1.1,-0.85L-1.1,-0.85Z',
  /* diagonal cross */ 'M0,-0.5L0.5,-1L1,-0.5L0.5,0L1,0.5L0.5,1L0,0.5L-0.5,1L-1,0.5L-0.5,0L-1,-0.5L-0.5,-1Z',
  /* star */ 'M0,-1.15L0.33,-0.36L1.09,-0.36L0.48,0.16L0.71,0.95L0,0.48L-0.71,0.95L-0.48,0.16L-1.09,-0.36L-0.33,-0.36Z'
] as const

const dashes = [[], [7, 3], [2, 2], [10, 3, 2, 3], [4, 3], [14, 4], [8, 2, 2, 2, 2, 2], [2, 4]] as const

/** The number of styles that differ in colour, in shape and in dash. */
export const habitatStyleCount = colours.length

/**
 * The style of the habitat with this index, counted from 0 in the order of the study file. From the ninth on
 * colours repeat with another shape and dash, so that no two of the first 64 look the same.
 */
export function habitatStyle(index: number): HabitatStyle {
  const round = Math.floor(index / habitatStyleCount)
  const shifted = (index + round) % habitatStyleCount
  return {
    colour: colours[index % habitatStyleCount]!,
    shape: shapes[shifted]!,
    dash: dashes[shifted]!
  }
}

/** The styles of the first `count` habitats. */
export function habitatStyles(count: number): readonly HabitatStyle[] {
  return Array.from({length: count}, (_, index) => habitatStyle(index))
}
