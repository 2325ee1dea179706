import {DiskTrouble} from './disk-trouble.ts'

/** A zip, or a folder, that is not taken for an archive; nothing of it was unpacked. */
export class UntrustedZip extends DiskTrouble {
  constructor(
    reason: string,
    remedy = 'get the archive again from where it came; nothing of this one was unpacked'
  ) {
    super(`the archive is refused: ${reason}`, remedy)
    this.name = 'UntrustedZip'
  }
}
