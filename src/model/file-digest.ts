/** Size and checksums of one file. */
export interface FileDigest {
  /** Path inside the archive or study folder, with `/` between its parts. */
  readonly path: string
  readonly bytes: number
  /** Lower-case hexadecimal, like sha512. */
  readonly sha256: string
  readonly sha512: string
}

/** The checksums that an archive carries, strongest last. */
export const checksumKinds = ['sha256', 'sha512'] as const
export type ChecksumKind = (typeof checksumKinds)[number]
