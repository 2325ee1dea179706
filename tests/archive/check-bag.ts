import {createHash} from 'node:crypto'

/**
 * A second checker of bags, written from RFC 8493 alone and sharing nothing with the project: what is wrong with a
 * bag, given as the files in it.
 */
export function checkBag(files: ReadonlyMap<string, Uint8Array>): readonly string[] {
  const errors: string[] = []
  const text = (path: string): string => Buffer.from(files.get(path) ?? new Uint8Array()).toString('utf8')
  // Section 2.1.1: exactly two lines, UTF-8, no byte-order mark.
  const declaration =
    /^BagIt-Version: (\d+)\.(\d+)(?:\r\n|\n|\r)Tag-File-Character-Encoding: (\S+)(?:\r\n|\n|\r)?$/.exec(
      text('bagit.txt')
    )
  if (declaration === null) errors.push('bagit.txt: two lines are required')
  else if (declaration[1] !== '1' || declaration[2] !== '0' || declaration[3] !== 'UTF-8')
    errors.push('bagit.txt: BagIt 1.0 in UTF-8 is required')
  // Section 2.1.2: the payload directory.
  const payload = [...files.keys()].filter((path) => path.startsWith('data/'))
  // Section 2.1.3: payload manifests; section 2.2.1: tag manifests.
  const named = (pattern: RegExp) =>
    [...files.keys()].flatMap((path) => {
      const algorithm = pattern.exec(path)?.[1]
      return algorithm === undefined ? [] : [{path, algorithm}]
    })
  const manifests = named(/^manifest-([a-z0-9]+)\.txt$/)
  if (manifests.length === 0) errors.push('no payload manifest')
  if (!manifests.some(({algorithm}) => algorithm === 'sha512'))
    errors.push('section 2.4: sha512 should be there')
  for (const {path, algorithm} of manifests) {
    const entries = read(path)
    for (const file of payload) if (!entries.has(file)) errors.push(`${path}: ${file} is not listed`)
    for (const [file, checksum] of entries) {
      if (!file.startsWith('data/')) errors.push(`${path}: ${file} is no payload`)
      compare(path, file, checksum, algorithm)
    }
  }
  for (const {path, algorithm} of named(/^tagmanifest-([a-z0-9]+)\.txt$/)) {
    const entries = read(path)
    for (const manifest of manifests)
      if (!entries.has(manifest.path)) errors.push(`${path}: ${manifest.path} is not listed`)
    for (const [file, checksum] of entries) {
      if (file.startsWith('data/') || file.startsWith('tagmanifest-'))
        errors.push(`${path}: ${file} must not be listed`)
      compare(path, file, checksum, algorithm)
    }
  }
  // Section 2.2.2: labels, colons, folded lines; Payload-Oxum once.
  const info = text('bag-info.txt').replace(/(?:\r\n|\n|\r)[ \t]+/g, ' ')
  for (const line of info.split('\n').filter((each) => each !== ''))
    if (!/^[^:\s][^:]*: .+$/.test(line)) errors.push(`bag-info.txt: ${line}`)
  const oxum = [...info.matchAll(/^Payload-Oxum: (\d+)\.(\d+)$/gm)]
  const bytes = payload.reduce((sum, path) => sum + files.get(path)!.length, 0)
  if (oxum.length !== 1 || Number(oxum[0]![1]) !== bytes || Number(oxum[0]![2]) !== payload.length)
    errors.push(`Payload-Oxum is not ${bytes}.${payload.length}`)
  return errors

  function read(manifest: string): ReadonlyMap<string, string> {
    const entries = new Map<string, string>()
    for (const line of text(manifest).split(/\r\n|\n|\r/)) {
      if (line === '') continue
      const [, checksum = '', written = ''] = /^([0-9a-fA-F]+)[ \t]+(.+)$/.exec(line) ?? []
      const path = written
        .replace(/%0[Aa]/g, '\n')
        .replace(/%0[Dd]/g, '\r')
        .replaceAll('%25', '%')
      if (checksum === '') errors.push(`${manifest}: a line is no entry`)
      if (entries.has(path)) errors.push(`${manifest}: ${path} is listed twice`)
      if (/^[/~]|(^|\/)\.\.(\/|$)/.test(path)) errors.push(`${manifest}: ${path} is unsafe`)
      entries.set(path, checksum.toLowerCase())
    }
    return entries
  }

  function compare(manifest: string, path: string, checksum: string, algorithm: string): void {
    const content = files.get(path)
    if (content === undefined) errors.push(`${manifest}: ${path} is missing`)
    else if (createHash(algorithm).update(content).digest('hex') !== checksum)
      errors.push(`${manifest}: ${path} has another checksum`)
  }
}
