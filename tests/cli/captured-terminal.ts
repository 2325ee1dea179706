import {runPitfolio} from '../../src/cli/run-pitfolio.ts'
import {colours, noColours} from '../../src/cli/terminal/paint.ts'
import type {Terminal} from '../../src/cli/terminal/terminal.ts'

export interface Captured {
  readonly terminal: Terminal
  readonly out: () => string
  readonly err: () => string
}

export interface Screen {
  readonly isTerminal?: boolean
  readonly width?: number
  readonly debug?: boolean
}

/** A terminal that keeps what is written to it; a pipe unless it is said to be a screen. */
export function capturedTerminal({isTerminal = false, width = 100, debug = false}: Screen = {}): Captured {
  const text = {out: '', err: ''}
  const channel = (name: 'out' | 'err') => ({
    write: (more: string) => {
      text[name] += more
    },
    isTerminal,
    width,
    paint: isTerminal ? colours : noColours,
    draws: isTerminal
  })
  return {
    terminal: {out: channel('out'), err: channel('err'), debug},
    out: () => text.out,
    err: () => text.err
  }
}

/** Run a command line in this process. */
export async function run(
  words: readonly string[],
  screen: Screen = {}
): Promise<{code: number; out: string; err: string}> {
  const captured = capturedTerminal(screen)
  const code = await runPitfolio(words, captured.terminal)
  return {code, out: captured.out(), err: captured.err()}
}
