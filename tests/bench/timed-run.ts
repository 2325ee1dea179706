import {spawn} from 'node:child_process'
import {once} from 'node:events'

export interface TimedRun {
  readonly seconds: number
  readonly peakMegabytes: number
  readonly exitCode: number
}

const tellPeak = `process.on('exit', () => process.stderr.write('\\npeak ' + process.resourceUsage().maxRSS + '\\n'))`

/** Run a Node script in a process of its own: wall time and the most memory that it ever held. */
export async function timedRun(args: readonly string[]): Promise<TimedRun> {
  const start = performance.now()
  const child = spawn(
    process.execPath,
    ['--import', `data:text/javascript,${encodeURIComponent(tellPeak)}`, ...args],
    {
      stdio: ['ignore', 'ignore', 'pipe']
    }
  )
  let errors = ''
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    errors = (errors + text).slice(-2000)
  })
  const [exitCode] = (await once(child, 'close')) as [number]
  const peak = Number(/peak (\d+)\n$/.exec(errors)?.[1] ?? Number.NaN)
  return {seconds: (performance.now() - start) / 1000, peakMegabytes: peak / 1024, exitCode}
}

/** The run of middle length of several: less at the mercy of the machine than a mean. */
export async function medianRun(args: readonly string[], times: number): Promise<TimedRun> {
  const runs: TimedRun[] = []
  for (let run = 0; run < times; run++) runs.push(await timedRun(args))
  runs.sort((a, b) => a.seconds - b.seconds)
  return runs[times >> 1] as TimedRun
}
