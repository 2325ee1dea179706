/** Headers are compared without case, accents, spaces and punctuation: `Trap ID`, `trap_id` and `TrapId` are one. */
export function headerKey(header: string): string {
  return header
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '')
}
