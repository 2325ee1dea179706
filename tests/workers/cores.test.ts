import {join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {expect, test} from 'vitest'
import {runDist} from '../cli/run-dist.ts'
import {everythingIn, temporaryFolder} from '../files/study-on-disk.ts'

const example = fileURLToPath(new URL('../../example-study', import.meta.url))

test('the example study built with one core and with two is the same to the last byte', async () => {
  const folder = temporaryFolder()
  const built = async (cores: string) => {
    const out = join(folder, cores)
    const {code} = await runDist([
      'build',
      example,
      '--out',
      out,
      '--cores',
      cores,
      '--only',
      'season',
      '--quiet'
    ])
    expect(code).toBe(0)
    return everythingIn(out)
  }
  const one = await built('1')
  expect(Object.keys(one)).toContain('results.json')
  expect(await built('2')).toEqual(one)
})

test('a number of cores that is none is told, and nothing is built', async () => {
  for (const cores of ['0', '1.5', 'two']) {
    const {code, err} = await runDist(['build', example, '--cores', cores])
    expect(code).toBe(2)
    expect(err).toContain('It is a whole number from 1 to 64.')
  }
})
