import {spawnSync} from 'node:child_process'
import {fileURLToPath} from 'node:url'
import {checkStudy} from '../../src/check-study.ts'
import {readStudyFolder} from '../../src/files/read-study-folder.ts'
import type {UsableStudy} from '../../src/model/study.ts'
import {computeResults} from '../../src/results/index.ts'
import {plainRunner, type ReplicateTask, replicateRanges, splitRunner} from '../../src/results/replicates.ts'
import {bootstrapStandardErrors} from '../../src/statistics/bootstrap-standard-errors.ts'
import {expectedCoverage} from '../../src/statistics/coverage-at-size.ts'
import {curveSizes} from '../../src/statistics/curve-sizes.ts'
import {expectedDiversity} from '../../src/statistics/expected-diversity.ts'
import {frequencyCounts} from '../../src/statistics/frequency-counts.ts'
import {splitAmongThreads} from '../../src/workers/split-among-threads.ts'

const example = fileURLToPath(new URL('../../example-study', import.meta.url))
const inNumpy = fileURLToPath(new URL('statistics-numpy.py', import.meta.url))
const entry = new URL('../../dist/replicates-thread.js', import.meta.url)

/** Statistics: the bootstrap against numpy, the example study's whole statistics, and a million individuals. */
export async function statistics(): Promise<void> {
  await exampleStudy()
  againstNumpy()
  millionIndividuals()
}

async function exampleStudy(): Promise<void> {
  const usable = await checkStudy(await readStudyFolder(example))
  if ('unreadable' in usable) throw new Error('the example study cannot be read')
  for (const replicates of [200, 1000]) {
    const study = withReplicates(usable, replicates)
    const split = splitAmongThreads({entry, cores: 2})
    const one = timed(() => JSON.stringify(computeResults(study)))
    const two = timed(() => JSON.stringify(computeResults(study, splitRunner(split))))
    console.log(
      `example study, all statistics, ${replicates} replicates: ${told(one)}${replicates === 200 ? ' (limit 1 s, nothing compiled yet)' : ''}; ` +
        `with two cores ${told(two)}, ${one.value === two.value ? 'the same bytes' : 'OTHER BYTES'}`
    )
  }
}

function withReplicates(usable: UsableStudy, replicates: number): UsableStudy {
  const {study} = usable
  const {settings} = study
  const analysis = {...settings.analysis, replicates}
  return {...usable, study: {...study, settings: {...settings, analysis}}}
}

/** Three habitats of 100 species and 10,000 individuals, more and less even. */
function habitats(): readonly (ReplicateTask & {readonly counts: readonly number[]})[] {
  return [0.07, 0.09, 0.12].map((steepness, index) => {
    const shares = Array.from({length: 100}, (_, species) => Math.exp(-steepness * species))
    const total = shares.reduce((sum, share) => sum + share, 0)
    const counts = shares.map((share) => Math.max(1, Math.round((10_000 * share) / total)))
    counts[0]! += 10_000 - counts.reduce((sum, count) => sum + count, 0)
    const sample = frequencyCounts(counts)
    const sizes = curveSizes(10_000, 60)
    return {
      counts,
      sample,
      seed: 1,
      stream: `habitat ${index}`,
      replicates: 1000,
      sizes,
      coverages: sizes.map((size) => Math.min(1, expectedCoverage(sample, size))),
      commonCoverage: undefined
    }
  })
}

function againstNumpy(): void {
  const tasks = habitats()
  const input = tasks.map(({counts, sizes, coverages, replicates}) => ({
    counts,
    sizes,
    coverages,
    replicates,
    individuals: 10_000
  }))
  // What makes an old numpy run on a new processor makes a current one slow.
  const {OPENBLAS_CORETYPE: _, OPENBLAS_L2_SIZE: __, ...env} = process.env
  const run = spawnSync('python3', [inNumpy], {input: JSON.stringify(input), encoding: 'utf8', env})
  if (run.status !== 0) {
    console.log(`no numpy to compare with: ${run.error?.message ?? run.stderr}`)
    return
  }
  const numpy = JSON.parse(run.stdout) as {
    seconds: number
    cpuSeconds: number
    errors: number[][]
    numpy: string
  }
  const ours = best(3, () => tasks.map(plainRunner))
  const split = splitAmongThreads({entry, cores: 2})
  const two = best(3, () => tasks.map((task) => split(task, task.replicates, replicateRanges(task))))
  const same = JSON.stringify(two.value) === JSON.stringify(ours.value)
  const apart = tasks.flatMap(({sizes}, index) => {
    const at = 4 * sizes.findIndex((size) => size >= Math.floor(10_000 / 3))
    const errors = bootstrapStandardErrors(ours.value[index]!, 2 + 4 * sizes.length).slice(2 + at, 6 + at)
    return errors.map((error, column) => Math.abs(error! / numpy.errors[index]![column]! - 1))
  })
  console.log(
    `bootstrap of 3 habitats, 100 species, 10,000 individuals, 60 sizes and 60 coverages, 1,000 replicates: ${told(ours)}; ` +
      `numpy ${numpy.numpy} ${numpy.seconds.toFixed(2)} s (${numpy.cpuSeconds.toFixed(2)} s of processor time), ` +
      `${(numpy.seconds / ours.seconds).toFixed(1)} times as long, ${(numpy.cpuSeconds / ours.cpuSeconds).toFixed(1)} times the processor time (aim 3); ` +
      `with two cores, as a build uses them and numpy its own, ${told(two)}, ${same ? 'the same bytes' : 'OTHER BYTES'}, ` +
      `numpy ${(numpy.seconds / two.seconds).toFixed(1)} times as long; ` +
      `standard errors of the two programs differ by ${(100 * Math.max(...apart)).toFixed(0)} % at most`
  )
}

function millionIndividuals(): void {
  const shares = Array.from({length: 300}, (_, species) => Math.exp(-0.04 * species))
  const total = shares.reduce((sum, share) => sum + share, 0)
  const counts = shares.map((share) => Math.max(1, Math.round((1e6 * share) / total)))
  counts[0]! += 1e6 - counts.reduce((sum, count) => sum + count, 0)
  const sample = frequencyCounts(counts)
  const half = timed(() => expectedDiversity(sample, 1, 500_000))
  const sizes = curveSizes(1e6).filter((size) => size < 1e6)
  const curve = timed(() => sizes.map((size) => expectedDiversity(sample, 1, size)))
  console.log(
    `q = 1 of 1,000,000 individuals of 300 species rarefied to the half: ${told(half)} (limit 0.5 s); ` +
      `to each of ${sizes.length} sizes: ${told(curve)}`
  )
}

interface Timed<Value> {
  readonly value: Value
  readonly seconds: number
  readonly cpuSeconds: number
}

function timed<Value>(work: () => Value): Timed<Value> {
  const start = performance.now()
  const before = process.cpuUsage()
  const value = work()
  const {user, system} = process.cpuUsage(before)
  return {value, seconds: (performance.now() - start) / 1000, cpuSeconds: (user + system) / 1e6}
}

function best<Value>(times: number, work: () => Value): Timed<Value> {
  return Array.from({length: times}, () => timed(work)).reduce((low, next) =>
    next.seconds < low.seconds ? next : low
  )
}

function told({seconds, cpuSeconds}: Timed<unknown>): string {
  return `${seconds.toFixed(2)} s (${cpuSeconds.toFixed(2)} s of processor time)`
}
