/** How often something happened in so many seasons. */
export interface Tally {
  readonly hits: number
  readonly of: number
}

export function tally(outcomes: readonly (boolean | undefined)[]): Tally {
  const known = outcomes.filter((outcome) => outcome !== undefined)
  return {hits: known.filter((outcome) => outcome).length, of: known.length}
}

/** Per cent with one decimal and its Monte Carlo standard error: '94.6 ± 0.3'. */
export function percentWithError({hits, of}: Tally): string {
  if (of === 0) return 'never defined'
  const share = hits / of
  return `${percent(share)} ± ${percent(Math.sqrt((share * (1 - share)) / of))}`
}

export function percent(share: number): string {
  return (100 * share).toFixed(1)
}

/** Whether a share lies within limits; 'within error' where two Monte Carlo standard errors would bring it there. */
export function verdict({hits, of}: Tally, low: number, high: number): string {
  const share = hits / of
  const slack = 2 * Math.sqrt((share * (1 - share)) / of)
  if (share >= low && share <= high) return 'yes'
  return share >= low - slack && share <= high + slack ? 'within error' : '**no**'
}
