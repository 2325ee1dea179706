import type {Measure} from '../../model/quantity.ts'
import type {TaxonResult} from '../../model/results.ts'
import type {Cell} from '../table.ts'

const blank: Cell = {type: 'blank'}

/** The cells of report tables; what is absent becomes a blank cell, never the word 'undefined'. */
export const cell = {
  blank,
  measure: (measure: Measure | undefined): Cell =>
    measure === undefined ? blank : {type: 'measure', measure},
  interval: (measure: Measure): Cell =>
    'value' in measure && measure.interval !== undefined ? {type: 'interval', measure} : blank,
  /** How the interval beside it was made. */
  method: (measure: Measure): Cell => cell.text('value' in measure ? measure.interval?.method : undefined),
  text: (text: string | undefined): Cell =>
    text === undefined || text === '' ? blank : {type: 'text', text},
  marked: (text: string | undefined): Cell =>
    text === undefined || text === '' ? blank : {type: 'text', text, marked: true},
  date: (day: string | undefined): Cell => (day === undefined ? blank : {type: 'date', day}),
  /** Name and authority: for tables that introduce a taxon. */
  taxon: ({taxon, rank, authority}: TaxonResult): Cell => ({type: 'taxon', taxon, rank, authority}),
  /** The bare name: for tables where the authority would only repeat. */
  name: ({taxon, rank}: Pick<TaxonResult, 'taxon' | 'rank'>): Cell => ({type: 'taxon', taxon, rank}),
  place: (place: string): Cell => ({type: 'place', place})
}
