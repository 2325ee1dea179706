import {colours, noColours} from './paint.ts'
import type {Channel, Terminal} from './terminal.ts'

const widest = 100
const narrowest = 40

/** The terminal of this process: what its streams can show is decided here, once, from the environment. */
export function processTerminal(): Terminal {
  const {env} = process
  return {
    out: channel(process.stdout, env),
    err: channel(process.stderr, env),
    debug: (env.PITFOLIO_DEBUG ?? '') !== ''
  }
}

function channel(stream: NodeJS.WriteStream, env: NodeJS.ProcessEnv): Channel {
  const isTerminal = stream.isTTY === true && env.TERM !== 'dumb'
  // A reader that has seen enough (`| head`) is no fault: what is left is not shown, and the exit code stays true.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error
  })
  return {
    write: (text) => void stream.write(text),
    isTerminal,
    width: Math.max(narrowest, Math.min(widest, (isTerminal && stream.columns) || widest)),
    paint: isTerminal && (env.NO_COLOR ?? '') === '' ? colours : noColours,
    draws: isTerminal && showsUnicode(env)
  }
}

function showsUnicode(env: NodeJS.ProcessEnv): boolean {
  if (process.platform === 'win32') return true
  return /utf-?8/i.test(env.LC_ALL || env.LC_CTYPE || env.LANG || '')
}
