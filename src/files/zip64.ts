import {UntrustedZip} from './untrusted-zip.ts'

/** Zip64 (APPNOTE.TXT, section 4.3.14): what points to the longer end of a zip, and its length. */
export const zip64LocatorMark = 0x0706_4b50
export const zip64LocatorLength = 20
/** What stands where a longer number is meant. */
export const zip64Unstated = 0xffff_ffff

/** Why a zip in that form is not read: it would be larger than any archive that pitfolio writes. */
export function zip64(): UntrustedZip {
  return new UntrustedZip(
    'it is in the Zip64 form, for zips above 4 gigabytes, which pitfolio neither writes nor reads',
    'unpack it and verify the folder; nothing of it was unpacked'
  )
}
