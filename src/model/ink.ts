/**
 * The four tones that everything but data is drawn in, on a light and on a dark page. Charts are drawn with the
 * light ones; a page that charts are placed in may exchange them (see `inkRules` of the SVG folder). Text tones
 * have a contrast of at least 4.5:1 against the paper of their own column (WCAG 2.2, success criterion 1.4.3).
 */
export const inkTones = {
  /** Text and whatever must be read. */
  ink: {light: '#1c1c1a', dark: '#ecece8'},
  /** Axis lines, ticks, axis titles, marks that stand for no habitat. */
  muted: {light: '#5c5c57', dark: '#a8a8a1'},
  /** Grid lines: there when looked for. */
  rule: {light: '#dfdfda', dark: '#3b3b39'},
  /** What the chart is drawn on, also the inside of open symbols. */
  paper: {light: '#ffffff', dark: '#1a1a19'}
} as const

export type InkTone = keyof typeof inkTones
