import {readFile} from 'node:fs/promises'
import {join} from 'node:path'
import {packageRoot} from './package-root.ts'
import {readStudyFolder} from './read-study-folder.ts'

const schemaFile = 'study.schema.json'

/** The files of a new study: the commented starter, or the example study; with the schema that editors complete study.yaml by. */
export async function readStarter(kind: 'starter' | 'example'): Promise<ReadonlyMap<string, Uint8Array>> {
  const {folder} = packageRoot()
  const origin = join(folder, kind === 'starter' ? 'templates/starter' : 'example-study')
  const files = new Map<string, Uint8Array>()
  for (const path of (await readStudyFolder(origin)).files.keys())
    files.set(path, await readFile(join(origin, path)))
  const settings = Buffer.from(files.get('study.yaml') ?? '').toString('utf8')
  files.set(
    'study.yaml',
    Buffer.from(settings.replace(/^(# yaml-language-server: \$schema=).*/, `$1./${schemaFile}`))
  )
  files.set(schemaFile, await readFile(join(folder, 'src/model', schemaFile)))
  return new Map([...files].sort(([a], [b]) => (a < b ? -1 : 1)))
}
