import {access, constants} from 'node:fs/promises'
import {delimiter, join} from 'node:path'

/** What the machine says of its browsers; the command line reads it from the environment. */
export interface BrowserPlaces {
  /** A program that the person named: nothing else is tried then. */
  readonly named?: string
  /** Folders of programs, joined as the system does. */
  readonly searchPath?: string
}

const programs = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'chrome.exe',
  'msedge.exe'
]

/** Where installers put it, on systems that keep it off the search path. */
const usualPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe'
]

/** The path of an installed Chromium, or of a browser built on it; undefined where there is none. */
export async function findBrowser({named, searchPath = ''}: BrowserPlaces): Promise<string | undefined> {
  const onPath = searchPath
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => programs.map((program) => join(folder, program)))
  const candidates = named === undefined ? [...onPath, ...usualPlaces] : [named]
  for (const candidate of candidates) if (await isProgram(candidate)) return candidate
  return undefined
}

async function isProgram(path: string): Promise<boolean> {
  return access(path, constants.X_OK).then(
    () => true,
    () => false
  )
}
