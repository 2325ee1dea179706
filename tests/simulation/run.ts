import {execFile} from 'node:child_process'
import {writeFileSync} from 'node:fs'
import {setPriority} from 'node:os'
import {fileURLToPath} from 'node:url'
import {promisify} from 'node:util'
import {compositionLevels} from './composition-levels.ts'
import {diversityIntervals} from './diversity-intervals.ts'
import {habitatTests} from './habitat-tests.ts'
import {indicatorLevels} from './indicator-levels.ts'
import {rateIntervals} from './rate-intervals.ts'
import {ratioIntervals} from './ratio-intervals.ts'
import {richnessIntervals} from './richness-intervals.ts'
import {type Section, sectionText} from './section.ts'
import {shareIntervals} from './share-intervals.ts'

const seed = 20_261_125

/** In the order of the results. */
const sections: Readonly<Record<string, (seed: number) => readonly Section[]>> = {
  rateIntervals,
  habitatTests,
  ratioIntervals,
  shareIntervals,
  diversityIntervals,
  richnessIntervals,
  compositionLevels,
  indicatorLevels
}

const heading = `# How often intervals and tests hold what they promise

Made by \`npm run simulate\` with seed ${seed}; the same seed gives the same bytes. It takes about ten minutes of one
processor, works on two, and is no part of the tests. Every season is invented: sites differ by a gamma draw (its variance is one over the
'site shape': catches of sites are negative binomial), traps within a site share it and differ by one of their own
(shape 4), each trap of 4 to 8 loses about one fortnight in ten, so that effort is unequal. After ± stands the Monte Carlo
standard error. 'Within error': the wanted range is reached within two of them.`

/** Runs one of them and prints it as JSON, in a process of its own. */
function runSection(name: string): void {
  process.stdout.write(JSON.stringify(sections[name]!(seed)))
}

/** Runs all sections, two at a time, and writes the results. */
async function runAll(): Promise<void> {
  const texts = new Map<string, string>()
  const waiting = ['habitatTests', ...Object.keys(sections).filter((name) => name !== 'habitatTests')]
  const worker = async (): Promise<void> => {
    for (let name = waiting.shift(); name !== undefined; name = waiting.shift()) {
      const args = [...process.execArgv, fileURLToPath(import.meta.url), name]
      const {stdout} = await promisify(execFile)(process.execPath, args)
      const made: readonly Section[] = JSON.parse(stdout)
      texts.set(name, made.map(sectionText).join('\n\n'))
      console.error(`${name} done`)
    }
  }
  await Promise.all([worker(), worker()])
  const body = Object.keys(sections).map((name) => texts.get(name)!)
  writeFileSync(new URL('results.md', import.meta.url), `${[heading, ...body].join('\n\n')}\n`)
}

// Whoever else works on the machine comes first.
setPriority(15)
const only = process.argv[2]
if (only === undefined) await runAll()
else runSection(only)
