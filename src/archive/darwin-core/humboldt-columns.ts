import type {Target} from './target.ts'
import type {TermColumn} from './term-table.ts'

/** What one event set out to find, how hard it looked and how fully it reports. */
export interface HumboldtRow {
  readonly event: string
  readonly siteCount?: number
  readonly nesting?: string
  readonly habitats?: string
  readonly days?: number
  /** Kinds whose records do not stand with this event, so that their absence here says nothing. */
  readonly excluded?: string
  /** Absent where nobody says whether all animals sought were written down. */
  readonly fullyReported?: boolean | undefined
  readonly absence?: boolean
  readonly absent?: string
  readonly nonTarget?: boolean
  readonly effort?: number | undefined
  readonly isCollection?: boolean
  readonly vouchers?: boolean
  readonly by?: string | undefined
  readonly extreme?: string
}

/** The columns of the Humboldt Extension. */
export function humboldtColumns({groups, lifeStages}: Target): readonly TermColumn<HumboldtRow>[] {
  const [taxa, stages] = [groups, lifeStages].map((list) => list.join(' | '))
  const hasLifeStages = lifeStages.length > 0
  const ofCollection =
    (value: (row: HumboldtRow) => string | number | boolean | undefined) =>
    (row: HumboldtRow): string | number | boolean | undefined =>
      row.isCollection ? value(row) : undefined
  return [
    {term: 'dwc:eventID', value: ({event}) => event},
    {term: 'eco:siteCount', value: ({siteCount}) => siteCount},
    {term: 'eco:siteNestingDescription', value: ({nesting}) => nesting},
    {term: 'eco:targetTaxonomicScope', value: () => taxa},
    {term: 'eco:targetHabitatScope', value: ({habitats}) => habitats},
    {term: 'eco:eventDurationValue', value: ({days}) => days},
    {term: 'eco:eventDurationUnit', value: ({days}) => (days === undefined ? undefined : 'days')},
    {term: 'eco:excludedTaxonomicScope', value: ({excluded}) => excluded},
    {term: 'eco:isTaxonomicScopeFullyReported', value: ({fullyReported}) => fullyReported},
    ...(hasLifeStages
      ? [
          {term: 'eco:targetLifeStageScope', value: () => stages} as const,
          {
            term: 'eco:isLifeStageScopeFullyReported',
            value: ({fullyReported}: HumboldtRow) => fullyReported
          } as const
        ]
      : []),
    {term: 'eco:isAbsenceReported', value: ofCollection(({absence = false}) => absence)},
    {term: 'eco:absentTaxa', value: ({absent}) => absent},
    {term: 'eco:hasNonTargetTaxa', value: ofCollection(({nonTarget}) => nonTarget)},
    {term: 'eco:areNonTargetTaxaFullyReported', value: ofCollection(() => false)},
    {term: 'eco:isAbundanceReported', value: ofCollection(() => true)},
    {term: 'eco:isAbundanceCapReported', value: ofCollection(() => false)},
    // Sexes and stages stand in rows of their own, which add up to the whole.
    {term: 'eco:isLeastSpecificTargetCategoryQuantityInclusive', value: ofCollection(() => false)},
    {term: 'eco:hasVouchers', value: ofCollection(({vouchers}) => vouchers)},
    {term: 'eco:samplingPerformedBy', value: ({by}) => by},
    {term: 'eco:isSamplingEffortReported', value: ofCollection(({effort}) => effort !== undefined)},
    {
      term: 'eco:samplingEffortProtocol',
      value: ({effort}) => (effort === undefined ? undefined : effortProtocol)
    },
    {term: 'eco:samplingEffortValue', value: ({effort}) => effort},
    {term: 'eco:samplingEffortUnit', value: ({effort}) => (effort === undefined ? undefined : 'trapDays')},
    {term: 'eco:reportedExtremeConditions', value: ({extreme}) => extreme}
  ]
}

const effortProtocol =
  'nights from opening to collection (the difference of the dates, or of the clock times where all have one), times the credit for the state in which the trap was found; one trap open for one night is one'
