import {textWidth} from './text-metrics/text-width.ts'

declare module 'vega' {
  /** The library's hook for measuring text, missing from its own type declarations. */
  export const textMetrics: {width: typeof textWidth}
}

/** The two libraries that turn a specification into a scene and a scene into SVG. */
export interface Engine {
  readonly vega: typeof import('vega')
  readonly vegaLite: typeof import('vega-lite')
}

let loading: Promise<Engine> | undefined

/** Loads the libraries with the first chart and never again: a command that draws nothing starts without them. */
export function loadEngine(): Promise<Engine> {
  loading ??= load()
  return loading
}

async function load(): Promise<Engine> {
  const [vega, vegaLite] = await Promise.all([import('vega'), import('vega-lite')])
  // Left alone, the library guesses widths (0.8 em a letter) or, where a canvas package happens to be installed,
  // asks the machine's fonts: labels would be thinned out, or the bytes would differ from machine to machine.
  vega.textMetrics.width = textWidth
  return {vega, vegaLite}
}
