// The floor under `archive`: SHA-256, SHA-512 and deflate of every file of a folder, and nothing else.
import {createHash} from 'node:crypto'
import {createReadStream, readdirSync} from 'node:fs'
import {join} from 'node:path'
import {Deflate} from 'fflate'

for (const entry of readdirSync(process.argv[2], {withFileTypes: true, recursive: true})) {
  if (!entry.isFile()) continue
  const [sha256, sha512] = [createHash('sha256'), createHash('sha512')]
  const deflate = new Deflate({level: 6}, () => {})
  for await (const chunk of createReadStream(join(entry.parentPath, entry.name), {
    highWaterMark: 64 * 1024
  })) {
    sha256.update(chunk)
    sha512.update(chunk)
    deflate.push(chunk)
  }
  deflate.push(new Uint8Array(0), true)
  sha256.digest()
  sha512.digest()
}
