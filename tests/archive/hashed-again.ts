import {createHash} from 'node:crypto'

/** The files of an archive with manifests that fit whatever the files are now: what a careful forger would write. */
export function hashedAgain(files: ReadonlyMap<string, Uint8Array>): ReadonlyMap<string, Uint8Array> {
  const result = new Map([...files].filter(([path]) => !/manifest-/.test(path)))
  const list = (kind: string, wanted: (path: string) => boolean): Uint8Array =>
    Buffer.from(
      [...result]
        .filter(([path]) => wanted(path))
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([path, bytes]) => `${createHash(kind).update(bytes).digest('hex')}  ${path}\n`)
        .join('')
    )
  const payload = [...result].filter(([path]) => path.startsWith('data/'))
  const bytes = payload.reduce((sum, [, content]) => sum + content.length, 0)
  const info = Buffer.from(result.get('bag-info.txt')!).toString('utf8')
  result.set(
    'bag-info.txt',
    Buffer.from(info.replace(/^Payload-Oxum: .*$/m, `Payload-Oxum: ${bytes}.${payload.length}`))
  )
  const manifests = ['sha256', 'sha512'].map(
    (kind) => [`manifest-${kind}.txt`, list(kind, (path) => path.startsWith('data/'))] as const
  )
  for (const [path, content] of manifests) result.set(path, content)
  const tags = ['sha256', 'sha512'].map(
    (kind) => [`tagmanifest-${kind}.txt`, list(kind, (path) => !path.startsWith('data/'))] as const
  )
  for (const [path, content] of tags) result.set(path, content)
  return result
}
