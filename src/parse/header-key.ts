/**
 * Headers are compared without case, accents, spaces and punctuation: `Trap ID`, `trap_id` and `TrapId` are one. A
 * header of signs alone, such as `#`, is compared as it stands.
 */
export function headerKey(header: string): string {
  const key = header
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '')
  return key === '' ? header.trim() : key
}
