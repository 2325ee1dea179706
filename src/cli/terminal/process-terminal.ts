import {colours, noColours} from './paint.ts'
import type {Channel, Terminal} from './terminal.ts'

const widest = 100
const narrowest = 40

/** The terminal of this process: what its streams can show is decided here, once, from the environment. */
export function processTerminal(): Terminal {
  const {env} = process
  return {
    out: channelOf(process.stdout, env, process.platform),
    err: channelOf(process.stderr, env, process.platform),
    debug: (env.PITFOLIO_DEBUG ?? '') !== '',
    browsers: {
      ...(env.PITFOLIO_BROWSER && {named: env.PITFOLIO_BROWSER}),
      ...(env.PATH !== undefined && {searchPath: env.PATH})
    }
  }
}

/** What one stream can show. */
export function channelOf(stream: NodeJS.WriteStream, env: NodeJS.ProcessEnv, platform: string): Channel {
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
    draws: isTerminal && showsUnicode(env, platform)
  }
}

function showsUnicode(env: NodeJS.ProcessEnv, platform: string): boolean {
  if (platform === 'win32') return true
  return /utf-?8/i.test(env.LC_ALL || env.LC_CTYPE || env.LANG || '')
}
