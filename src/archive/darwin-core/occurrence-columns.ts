import {isoDay} from '../../model/day.ts'
import type {CatchRecord} from '../../model/study.ts'
import type {Dataset} from '../dataset.ts'
import type {Identification} from './identification.ts'
import type {TermColumn} from './term-table.ts'

/**
 * Darwin Core recommends `detected` and `notDetected` since May 2026; the largest aggregator still shows what it does
 * not know as present, which for an absence is the worst of errors. The older words are understood everywhere.
 */
const occurrenceStatus = {found: 'present', notFound: 'absent'} as const

/** One name, sex, life stage and doubt of a collection; or a group that an intact trap did not catch. */
export interface OccurrenceRow {
  readonly event: string
  readonly id: string
  readonly name: Identification
  readonly record: CatchRecord | undefined
  readonly count: number
  readonly recordedBy: string | undefined
  readonly remarks: string | undefined
  readonly withheld?: string
}

/** What hangs on the name alone. */
export const nameColumns: readonly TermColumn<OccurrenceRow>[] = [
  {term: 'dwc:scientificName', value: ({name}) => name.scientificName},
  {term: 'dwc:scientificNameAuthorship', value: ({name}) => name.authorship},
  {term: 'dwc:taxonRank', value: ({name}) => name.rank},
  {term: 'dwc:class', value: ({name}) => name.className},
  {term: 'dwc:order', value: ({name}) => name.order},
  {term: 'dwc:family', value: ({name}) => name.family},
  {term: 'dwc:genus', value: ({name}) => name.genus},
  {term: 'dwc:vernacularName', value: ({name}) => name.vernacular},
  {term: 'dwc:identificationQualifier', value: ({name}) => name.qualifier},
  {term: 'dwc:verbatimIdentification', value: ({name}) => name.verbatim}
]

/** The columns of the occurrences. */
export function occurrenceColumns({authors, others}: Dataset): readonly TermColumn<OccurrenceRow>[] {
  const orcids = new Map(
    [...authors, ...others].flatMap(({name, orcid}) => (orcid === undefined ? [] : [[name, orcid] as const]))
  )
  return [
    {term: 'dwc:eventID', value: ({event}) => event},
    {term: 'dwc:occurrenceID', value: ({id}) => id},
    {
      term: 'dwc:basisOfRecord',
      value: ({record}) => (record?.voucher === undefined ? 'HumanObservation' : 'PreservedSpecimen')
    },
    {
      term: 'dwc:occurrenceStatus',
      value: ({count}) => (count > 0 ? occurrenceStatus.found : occurrenceStatus.notFound)
    },
    ...nameColumns,
    {term: 'dwc:identifiedBy', value: ({record}) => record?.identifiedBy},
    {term: 'dwc:identifiedByID', value: ({record}) => orcids.get(record?.identifiedBy ?? '')},
    {
      term: 'dwc:dateIdentified',
      value: ({record}) => (record?.identifiedOn === undefined ? undefined : isoDay(record.identifiedOn))
    },
    {term: 'dwc:sex', value: ({record}) => record?.sex},
    {term: 'dwc:lifeStage', value: ({record}) => record?.lifeStage},
    {
      term: 'dwc:dynamicProperties',
      value: ({record}) =>
        record?.wingForm === undefined ? undefined : JSON.stringify({wingForm: record.wingForm})
    },
    {term: 'dwc:individualCount', value: ({count}) => count},
    {term: 'dwc:organismQuantity', value: ({count}) => count},
    {term: 'dwc:recordedBy', value: ({recordedBy}) => recordedBy},
    {term: 'dwc:catalogNumber', value: ({record}) => record?.voucher},
    {term: 'dwc:informationWithheld', value: ({withheld}) => withheld},
    {
      term: 'dwc:dataGeneralizations',
      value: ({withheld}) =>
        withheld === undefined
          ? undefined
          : 'the records of the season are summed and stand with the season as a whole'
    },
    {term: 'dwc:occurrenceRemarks', value: ({remarks}) => remarks}
  ]
}
