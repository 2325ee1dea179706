import {execFile} from 'node:child_process'
import {fileURLToPath} from 'node:url'
import {promisify} from 'node:util'
import {expect} from 'vitest'
import {testWith} from '../needs.ts'

const run = promisify(execFile)

// Two minutes of one processor, so that a busy machine may need some more.
testWith('python', 'R')(
  'the second implementation, run again, gives the committed cases and figures',
  async () => {
    const {stdout} = await run(fileURLToPath(new URL('run.sh', import.meta.url)))
    expect(stdout).toMatch(/^0 differences$/m)
  },
  15 * 60_000
)
