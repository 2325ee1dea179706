import type {FileHash, Provenance} from '../model/provenance.ts'
import type {Outputs} from '../model/source.ts'
import {provenanceFile} from './report-mark.ts'
import {fileHash} from './sha256.ts'

export interface Making {
  readonly toolVersion: string
  /** Documents asked for; all where absent. */
  readonly only?: readonly string[]
  /** Whether pages were printed to PDF. */
  readonly pdf?: boolean
  readonly seed: number
  readonly inputs: readonly FileHash[]
}

/** The files of a report and, last, provenance.json, which lists them all but itself. */
export function withProvenance(outputs: Outputs, {toolVersion, only, pdf, seed, inputs}: Making): Outputs {
  const byPath = (a: {path: string}, b: {path: string}): number =>
    a.path < b.path ? -1 : a.path > b.path ? 1 : 0
  const provenance: Provenance = {
    format: 'pitfolio-provenance',
    formatVersion: 1,
    tool: {name: 'pitfolio', version: toolVersion},
    options: {...(only && {only: [...only].sort()}), ...(pdf === true && {pdf})},
    seed,
    inputs: [...inputs].sort(byPath),
    outputs: [...outputs].map(([path, content]) => fileHash(path, content)).sort(byPath)
  }
  return new Map([...outputs, [provenanceFile, `${JSON.stringify(provenance, null, 2)}\n`]])
}
