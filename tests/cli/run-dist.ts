import {type ChildProcess, spawn} from 'node:child_process'
import {existsSync} from 'node:fs'
import {fileURLToPath} from 'node:url'

/** The command as it is installed. */
export const program = fileURLToPath(new URL('../../dist/pitfolio.js', import.meta.url))

export interface Ended {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

export interface Surroundings {
  readonly folder?: string
  readonly env?: Readonly<Record<string, string>>
  /** Called with the running program, to disturb it. */
  readonly disturb?: (child: ChildProcess) => void
  readonly program?: string
}

/** Run the built command as a process of its own. */
export async function runDist(words: readonly string[], surroundings: Surroundings = {}): Promise<Ended> {
  if (!existsSync(program)) throw new Error('dist is not there: npm run build')
  const {folder, env = {}, disturb} = surroundings
  const child = spawn(process.execPath, [surroundings.program ?? program, ...words], {
    ...(folder !== undefined && {cwd: folder}),
    env: {PATH: process.env.PATH, HOME: process.env.HOME, ...env}
  })
  const text = {out: '', err: ''}
  child.stdout.on('data', (chunk: Buffer) => {
    text.out += chunk.toString()
  })
  child.stderr.on('data', (chunk: Buffer) => {
    text.err += chunk.toString()
  })
  disturb?.(child)
  const code = await new Promise<number | null>((resolve, reject) => {
    child.on('error', reject)
    child.on('close', resolve)
  })
  return {code, ...text}
}
