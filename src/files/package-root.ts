import {readFileSync} from 'node:fs'
import {dirname, join} from 'node:path'
import {fileURLToPath} from 'node:url'

export interface PackageRoot {
  readonly folder: string
  readonly version: string
}

/** The folder of the package, from wherever this code runs: src in a clone, dist in a clone or installed. */
export function packageRoot(from: string = import.meta.url): PackageRoot {
  let folder = dirname(fileURLToPath(from))
  while (true) {
    const version = versionIn(folder)
    if (version !== undefined) return {folder, version}
    const parent = dirname(folder)
    if (parent === folder) throw new Error('the package.json of pitfolio is not above its own code')
    folder = parent
  }
}

function versionIn(folder: string): string | undefined {
  try {
    const {name, version} = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Readonly<
      Record<string, unknown>
    >
    return name === 'pitfolio' && typeof version === 'string' ? version : undefined
  } catch {
    return undefined
  }
}
