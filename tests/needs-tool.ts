import {existsSync} from 'node:fs'
import {delimiter, join} from 'node:path'
import {test} from 'vitest'

/**
 * `test` where the tools are on the machine; where one is missing, a test that is skipped under its name, or that
 * fails when PITFOLIO_NO_SKIPS is set.
 */
export function needsTool(...tools: readonly string[]): typeof test | typeof test.skip {
  const isThere = tools.every(isOnPath)
  return isThere || process.env.PITFOLIO_NO_SKIPS ? test : test.skip
}

function isOnPath(tool: string): boolean {
  const folders = (process.env.PATH ?? '').split(delimiter)
  return folders.some((folder) => folder !== '' && existsSync(join(folder, tool)))
}
