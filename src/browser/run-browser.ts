import {spawn} from 'node:child_process'

/**
 * Runs a browser until it ends.
 *
 * @returns undefined when all went well; else what went wrong, in words that complete 'because ...'.
 */
export async function runBrowser(
  browser: string,
  words: readonly string[],
  timeoutMs: number
): Promise<string | undefined> {
  return new Promise((resolve) => {
    const child = spawn(browser, words, {stdio: 'ignore', windowsHide: true})
    const timer = setTimeout(() => {
      child.kill('SIGKILL')
      resolve(`the browser did not finish within ${Math.round(timeoutMs / 1000)} seconds`)
    }, timeoutMs)
    child.once('error', (error) => {
      clearTimeout(timer)
      resolve(`the browser did not start (${error.message})`)
    })
    child.once('exit', (code, signal) => {
      clearTimeout(timer)
      resolve(code === 0 ? undefined : `the browser ended with ${signal ?? `code ${code}`}`)
    })
  })
}
