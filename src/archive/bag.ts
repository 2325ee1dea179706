import type {ArchiveEntry, ArchiveStage} from '../model/archive-entry.ts'
import {type ChecksumKind, checksumKinds, type FileDigest} from '../model/file-digest.ts'
import {codeUnitOrder} from '../results/code-unit-order.ts'

/** BagIt 1.0, RFC 8493: the declaration, word for word. */
export const bagDeclaration = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n'

/** Folder of the payload inside a bag. */
export const payloadFolder = 'data/'

/** Lines of bag-info.txt, in their order; reserved labels of RFC 8493, section 2.2.2, where one fits. */
export type BagInfo = readonly (readonly [label: string, value: string])[]

/** The stages that make a bag of a payload already written: what describes it, then what describes that. */
export function bagStages(info: BagInfo): readonly ArchiveStage[] {
  return [
    (written) => {
      const payload = written.filter(({path}) => path.startsWith(payloadFolder))
      return [
        {path: 'bagit.txt', content: bagDeclaration},
        {path: 'bag-info.txt', content: bagInfoText([...info, ['Payload-Oxum', payloadOxum(payload)]])},
        ...checksumKinds.map((kind) => manifest('manifest', kind, payload))
      ]
    },
    (written) => {
      const tags = written.filter(({path}) => !path.startsWith(payloadFolder))
      return checksumKinds.map((kind) => manifest('tagmanifest', kind, tags))
    }
  ]
}

/** `bytes.files`: a quick check that nothing is missing. */
export function payloadOxum(payload: readonly FileDigest[]): string {
  return `${payload.reduce((sum, {bytes}) => sum + bytes, 0)}.${payload.length}`
}

function manifest(
  name: 'manifest' | 'tagmanifest',
  kind: ChecksumKind,
  files: readonly FileDigest[]
): ArchiveEntry {
  const lines = new Map(files.map((file) => [file.path, file[kind]]))
  return {path: `${name}-${kind}.txt`, content: manifestText(lines)}
}

/** Path to checksum, as the lines that `sha256sum -c` and `sha512sum -c` read. */
export function manifestText(lines: ReadonlyMap<string, string>): string {
  return [...lines]
    .sort(([a], [b]) => codeUnitOrder(a, b))
    .map(([path, checksum]) => `${checksum}  ${encoded(path)}\n`)
    .join('')
}

const escapes: Readonly<Record<string, string>> = {'%': '%25', '\n': '%0A', '\r': '%0D'}

/** RFC 8493, section 2.1.3: line feed, carriage return and per cent in a path, and nothing else, are encoded. */
function encoded(path: string): string {
  return path.replace(/[%\n\r]/g, (sign) => escapes[sign]!)
}

/** Lines are folded before the 79th sign, as RFC 8493, section 2.2.2, recommends. */
const longestLine = 79

function bagInfoText(info: BagInfo): string {
  return info
    .map(([label, value]) => `${folded(`${label}: ${value.replace(/\s+/g, ' ').trim()}`)}\n`)
    .join('')
}

function folded(text: string): string {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > longestLine) {
      lines.push(line)
      line = ` ${word}`
    } else line += line === '' ? word : ` ${word}`
  }
  return [...lines, line].join('\n ')
}
