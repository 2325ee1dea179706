import advances from './liberation-sans-advances.json' with {type: 'json'}

/** What a piece of text is set in: the fields of a text mark that decide its width. */
export interface TextStyle {
  /** Pixels; 11 when absent, as the chart library has it. */
  readonly fontSize?: number | null
  readonly fontWeight?: string | number | null
  /** Longest width in pixels; text is cut to it. 0 or absent: no limit. */
  readonly limit?: number | null
}

type Advances = ReadonlyMap<string, number>

const unitsPerEm = 2048

/**
 * Room for readers whose machine has none of the fonts asked for. The usual substitute, DejaVu Sans, is 5 to 15 per
 * cent wider (measured in a browser); the rest of a long line goes into the padding and the margin.
 */
const allowance = 1.12

const upright: Advances = new Map(Object.entries(advances.regular))
const heavy: Advances = new Map(Object.entries(advances.bold))
const combiningMark = /^\p{Mark}$/u

/**
 * Width in pixels that a line of text takes up in a chart: the sum of the advance widths of its letters, with an
 * allowance for wider substitute fonts. The same everywhere, because it asks no font of the machine.
 */
export function textWidth(style: TextStyle, text: unknown): number {
  const line = text === null || text === undefined ? '' : String(text).trim()
  const table = isBold(style.fontWeight) ? heavy : upright
  let units = 0
  for (const letter of line) units += advance(table, letter)
  const width = (units / unitsPerEm) * (style.fontSize ?? 11) * allowance
  return style.limit && style.limit > 0 ? Math.min(width, style.limit) : width
}

/** Letters outside the table count as their base letter (Vietnamese), or else as a full em (Chinese, Japanese). */
function advance(table: Advances, letter: string): number {
  const known = table.get(letter)
  if (known !== undefined) return known
  if (combiningMark.test(letter)) return 0
  const base = [...letter.normalize('NFD')][0]!
  return table.get(base) ?? unitsPerEm
}

function isBold(weight: TextStyle['fontWeight']): boolean {
  return weight === 'bold' || weight === 'bolder' || Number(weight) >= 600
}
