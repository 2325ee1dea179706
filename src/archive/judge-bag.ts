import {checksumKinds, type FileDigest} from '../model/file-digest.ts'
import {codeUnitOrder} from '../results/code-unit-order.ts'
import {bagDeclaration, payloadFolder, payloadOxum} from './bag.ts'
import {type ReadManifest, readManifest} from './read-manifest.ts'

/** A file of an archive that is not as it was when the archive was made. */
export interface BagProblem {
  readonly file: string
  /** Completes the sentence that begins with the file's name. */
  readonly message: string
}

export interface FoundBag {
  /** Every file that is there and could be read. */
  readonly digests: readonly FileDigest[]
  /** Text of the files beside data/ (manifests, bagit.txt, bag-info.txt) by path. */
  readonly tags: ReadonlyMap<string, string>
  /** Files that could not be read to their end, with the reason. */
  readonly unreadable: ReadonlyMap<string, string>
}

/**
 * Which files of a bag were changed, added or lost. Every file is listed twice, by SHA-256 and by SHA-512: where
 * both disagree with a file, the file was changed; where only one does, that manifest was.
 */
export function judgeBag({digests, tags, unreadable}: FoundBag): readonly BagProblem[] {
  const problems = new Map<string, string>()
  const blame = (file: string, message: string): void => {
    if (!problems.has(file)) problems.set(file, message)
  }
  for (const [file, reason] of unreadable) blame(file, `cannot be read: ${reason}`)
  const manifests = [...tags].flatMap(([file, text]) => readManifest(file, text) ?? [])
  for (const {file, trouble} of manifests) if (trouble !== undefined) blame(file, `was changed: ${trouble}`)
  for (const of of ['payload', 'tags'] as const) {
    const mine = manifests.filter((manifest) => manifest.of === of)
    for (const kind of checksumKinds) {
      const name = `${of === 'payload' ? 'manifest' : 'tagmanifest'}-${kind}.txt`
      if (!mine.some((manifest) => manifest.kind === kind) && !unreadable.has(name)) blame(name, 'is missing')
    }
    const files = digests.filter(({path}) => kindOf(path) === of)
    judgeFiles(files, mine, unreadable, blame)
  }
  const declaration = tags.get('bagit.txt')
  if (declaration === undefined && !unreadable.has('bagit.txt')) blame('bagit.txt', 'is missing')
  if (declaration !== undefined && declaration !== bagDeclaration)
    blame('bagit.txt', 'was changed: it does not declare BagIt 1.0')
  if (problems.size === 0) judgeOxum(digests, tags.get('bag-info.txt'), blame)
  return [...problems].sort(([a], [b]) => codeUnitOrder(a, b)).map(([file, message]) => ({file, message}))
}

type Blame = (file: string, message: string) => void

function kindOf(path: string): 'payload' | 'tags' | undefined {
  if (path.startsWith(payloadFolder)) return 'payload'
  return /^tagmanifest-(sha256|sha512)\.txt$/.test(path) ? undefined : 'tags'
}

function judgeFiles(
  files: readonly FileDigest[],
  manifests: readonly ReadManifest[],
  unreadable: ReadonlyMap<string, string>,
  blame: Blame
): void {
  const found = new Map(files.map((file) => [file.path, file]))
  for (const file of files) {
    const listing = manifests.filter(({lines}) => lines.has(file.path))
    const differing = listing.filter(({kind, lines}) => lines.get(file.path) !== file[kind])
    if (listing.length === 0) blame(file.path, 'was added: no manifest lists it')
    else if (differing.length === listing.length) blame(file.path, 'was changed: its checksum is another')
    else
      for (const manifest of differing)
        blame(manifest.file, `was changed: its line for ${file.path} is another`)
    if (listing.length > 0 && listing.length < manifests.length) {
      for (const manifest of manifests.filter(({lines}) => !lines.has(file.path)))
        blame(manifest.file, `was changed: it does not list ${file.path}`)
    }
  }
  const lost = new Set(manifests.flatMap(({lines}) => [...lines.keys()]).filter((path) => !found.has(path)))
  for (const path of lost) {
    if (unreadable.has(path)) continue
    const listing = manifests.filter(({lines}) => lines.has(path))
    if (listing.length === manifests.length) blame(path, 'is missing')
    else
      for (const manifest of listing)
        blame(manifest.file, `was changed: it lists ${path}, which is not there`)
  }
}

function judgeOxum(digests: readonly FileDigest[], info: string | undefined, blame: Blame): void {
  const stated = /^Payload-Oxum: (\S+)$/m.exec(info ?? '')?.[1]
  const counted = payloadOxum(digests.filter(({path}) => path.startsWith(payloadFolder)))
  if (stated !== counted)
    blame('bag-info.txt', `states the payload ${stated ?? 'not at all'}, counted are ${counted}`)
}
