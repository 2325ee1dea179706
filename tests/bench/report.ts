import {spawnSync} from 'node:child_process'
import {rmSync} from 'node:fs'
import {mkdtemp, readdir, readFile, rm, writeFile} from 'node:fs/promises'
import {tmpdir} from 'node:os'
import {join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {charts} from '../../src/charts/index.ts'
import {checkStudy} from '../../src/check-study.ts'
import {readAssets} from '../../src/files/read-assets.ts'
import {readStudyFolder} from '../../src/files/read-study-folder.ts'
import {computeResults} from '../../src/results/index.ts'

const pitfolio = fileURLToPath(new URL('../../dist/pitfolio.js', import.meta.url))
const floorScript = fileURLToPath(new URL('report-floor.mjs', import.meta.url))
const example = fileURLToPath(new URL('../../example-study', import.meta.url))

/** Every document of the example study, against Node, the chart libraries and the same pictures in the same run. */
export async function report(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'pitfolio-bench-'))
  try {
    const out = join(folder, 'report')
    const builds = [timedBuild(out)]
    const alone = [timedBuild(out, 1)]
    const input = join(folder, 'floor.json')
    await writeFile(input, JSON.stringify(await floorInput(out)))
    const floors = [timedFloor(input)]
    // In turns, so that what else the machine does falls on both.
    for (let run = 1; run < 3; run++) {
      builds.push(timedBuild(out))
      alone.push(timedBuild(out, 1))
      floors.push(timedFloor(input))
    }
    const [pages, pagesAlone] = [builds, alone].map((runs) =>
      median(runs.map(({whole, computing, word}) => whole - computing - word))
    ) as [number, number]
    const word = median(builds.map((build) => build.word))
    const drawing = median(floors.map((floor) => floor.drawing))
    const rasterising = median(floors.map((floor) => floor.rasterising))
    console.log(
      `example study, every page and Markdown file, statistics and Word apart: ${pages.toFixed(2)} s; ` +
        `floor ${drawing.toFixed(2)} s; ratio ${(pages / drawing).toFixed(2)} (limit 2); ` +
        `on one core ${pagesAlone.toFixed(2)} s, ratio ${(pagesAlone / drawing).toFixed(2)}`
    )
    console.log(`statistics: ${median(builds.map(({computing}) => computing)).toFixed(2)} s`)
    console.log(
      `Word files: ${word.toFixed(2)} s; floor, the same bitmaps: ${rasterising.toFixed(2)} s; ` +
        `ratio ${(word / rasterising).toFixed(2)}`
    )
  } finally {
    await rm(folder, {recursive: true, force: true})
  }
}

/** Seconds of a whole process, and of those of its stages that are counted apart. */
function timedBuild(out: string, cores?: number): {whole: number; computing: number; word: number} {
  // Replacing an older report takes reading it.
  rmSync(out, {recursive: true, force: true})
  const start = performance.now()
  const limit = cores === undefined ? [] : ['--cores', `${cores}`]
  const args = [pitfolio, 'build', example, '--out', out, '--force', '--quiet', '--timings', ...limit]
  const {status, stderr} = spawnSync(process.execPath, args, {encoding: 'utf8'})
  const whole = (performance.now() - start) / 1000
  if (status !== 0) throw new Error(stderr)
  const stage = (name: string): number =>
    Number(new RegExp(`(\\d+) ms +\\d+ % +${name}`).exec(stderr)?.[1]) / 1000
  return {whole, computing: stage('Computing'), word: stage('Writing the Word files')}
}

/** Seconds of a whole process that draws, measured as those of a build are, and those that bitmaps take on top. */
function timedFloor(input: string): {drawing: number; rasterising: number} {
  const start = performance.now()
  runFloor(input)
  const drawing = (performance.now() - start) / 1000
  return {drawing, rasterising: Number(runFloor(input, 'bitmaps'))}
}

function runFloor(...words: readonly string[]): string {
  const {status, stdout, stderr} = spawnSync(process.execPath, [floorScript, ...words], {encoding: 'utf8'})
  if (status !== 0) throw new Error(stderr)
  return stdout
}

/** The specifications of all figures, and the names of those that stand in documents for Word. */
async function floorInput(out: string) {
  const usable = await checkStudy(await readStudyFolder(example))
  if ('unreadable' in usable) throw new Error('the example study cannot be read')
  const results = computeResults(usable)
  const figures = charts
    .flatMap((chart) => chart.figures(results))
    .flatMap(({name, spec}) => (spec === undefined ? [] : [{name, spec}]))
  const files = await readdir(out)
  const texts = files
    .filter((file) => file.endsWith('.docx'))
    .map((file) => readFile(join(out, file.replace(/docx$/, 'md')), 'utf8'))
  const shown = (await Promise.all(texts)).join('\n')
  const bitmaps = figures.map(({name}) => name).filter((name) => shown.includes(`figures/${name}.svg`))
  return {figures, bitmaps, fontFiles: (await readAssets()).fontFiles}
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN
}
