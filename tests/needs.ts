import {spawnSync} from 'node:child_process'
import {existsSync} from 'node:fs'
import {fileURLToPath} from 'node:url'
import {test} from 'vitest'

/** Things outside the project that some tests need. */
const needs = {
  chromium: () =>
    ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].some(existsSync),
  libreoffice: () => runs('soffice', '--version'),
  xmllint: () => runs('xmllint', '--version'),
  pdftoppm: () => runs('pdftoppm', '-v'),
  sha512sum: () => runs('sha512sum', '--version'),
  python: () => runs('/usr/bin/python3', '-c', 'import numpy, scipy, statsmodels, mpmath'),
  R: () => runs('Rscript', '-e', 'library(MASS)'),
  'the published schemas': () => existsSync(sharedFolder('schemas')),
  'the real season': () => existsSync(sharedFolder('data/real-season'))
} as const

/** What no command installs: it lies beside the project or does not. */
const beside: ReadonlySet<Need> = new Set(['the published schemas', 'the real season'])

export type Need = keyof typeof needs

/** A folder beside the project that is no part of it: published schemas and a real season to try things on. */
export function sharedFolder(path: string): string {
  return fileURLToPath(new URL(`../../shared/${path}`, import.meta.url))
}

export function has(need: Need): boolean {
  return needs[need]()
}

/**
 * `test`, where everything that it needs is there; else a skipped test whose name says what is missing. `.ci/run`
 * installs what can be installed and sets PITFOLIO_NO_SKIPS, which makes a missing thing a failure; where the folder
 * beside the project is not there it says so, and sets PITFOLIO_WITHOUT_SHARED for the few tests that need it.
 */
export function testWith(
  ...needed: readonly Need[]
): (name: string, body: () => Promise<void> | void, timeout?: number) => void {
  const missing = needed.filter((need) => !needs[need]())
  const mayBeMissing = process.env.PITFOLIO_WITHOUT_SHARED && missing.every((need) => beside.has(need))
  return (name, body, timeout) => {
    if (missing.length === 0) test(name, body, timeout)
    else if (process.env.PITFOLIO_NO_SKIPS && !mayBeMissing)
      test(`${name} (needs ${missing.join(', ')})`, () =>
        Promise.reject(new Error(`missing: ${missing.join(', ')}`)))
    else test.skip(`${name} (skipped: needs ${missing.join(', ')})`, body)
  }
}

function runs(command: string, ...args: readonly string[]): boolean {
  return spawnSync(command, args, {stdio: 'ignore'}).status === 0
}
