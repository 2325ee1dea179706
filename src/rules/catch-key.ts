import type {CatchRecord} from '../model/study.ts'

/** What makes two catch rows of one collection the same entry: taxon, sex, stage, qualifier and vial. */
export function catchKey({taxon, sex, lifeStage, qualifier, vial, siteId, round}: CatchRecord): string {
  return `${taxon}\u0000${sex ?? ''}\u0000${lifeStage}\u0000${qualifier ?? ''}\u0000${vial ?? ''}\u0000${siteId ?? ''}\u0000${round ?? ''}`
}
