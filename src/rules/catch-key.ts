import type {CatchRecord} from '../model/study.ts'

/** What makes two catch rows of one collection the same entry: taxon, sex, stage, qualifier and vial. */
export function catchKey({taxon, sex, lifeStage, qualifier, vial, siteId, round}: CatchRecord): string {
  return `${taxon}\u0000${sex ?? ''}\u0000${lifeStage}\u0000${qualifier ?? ''}\u0000${vial ?? ''}\u0000${siteId ?? ''}\u0000${round ?? ''}`
}

/** A taxon for a message that also names its trap: a sensitive kind is not named there, since others read findings too. */
export function nameBesidePlace(
  taxon: string,
  taxa: ReadonlyMap<string, {readonly sensitive?: number}>
): string {
  return taxa.get(taxon)?.sensitive === undefined ? taxon : 'a sensitive kind'
}
