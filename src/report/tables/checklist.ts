import type {TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {wordColumn} from './column.ts'

/** Headings of the chapter under which each item is answered, as far as it is on record. */
export const sectionsOfChecklist: Readonly<Record<string, readonly string[]>> = {
  target: ['Sorting and identification'],
  sites: ['Study area and sites'],
  habitats: ['Study area and sites'],
  'trap-mouth': ['Traps and trap fluid'],
  depths: ['Traps and trap fluid'],
  material: ['Traps and trap fluid'],
  funnel: ['Traps and trap fluid'],
  cover: ['Traps and trap fluid'],
  guard: ['Traps and trap fluid'],
  barrier: ['Traps and trap fluid'],
  fluid: ['Traps and trap fluid'],
  layout: ['Study area and sites', 'Sampling design'],
  replicate: ['Sampling design'],
  settling: ['Sampling dates and effort'],
  dates: ['Sampling dates and effort'],
  losses: ['Traps that failed', 'Effort and losses'],
  effort: ['Effort and losses'],
  weather: ['Sampling dates and effort'],
  sorting: ['Sorting and identification', 'Traps that failed'],
  identification: ['Sorting and identification', 'Who did what'],
  vouchers: ['Vouchers, permits and by-catch'],
  bycatch: ['Vouchers, permits and by-catch', 'Vertebrates caught by accident'],
  permits: ['Vouchers, permits and by-catch'],
  analysis: ['Data analysis'],
  limitations: ['Limits of the method'],
  data: ['Availability of the data']
}

export const checklist: TableDefinition = {
  name: 'checklist',
  summary: 'What a pitfall study should report, whether this one does, and where in the chapter.',
  tables: ({results}) => [
    {
      name: 'checklist',
      columns: ['What should be reported', 'Status', 'What is on record', 'Where in the chapter'].map(
        wordColumn
      ),
      rows: results.checklist.map(({id, item, status, detail}) => [
        cell.text(item),
        cell.text(status),
        cell.text(detail),
        cell.text(status === 'reported' || status === 'partly' ? whereIs(id) : undefined)
      ]),
      empty: 'No checklist was made.'
    }
  ]
}

function whereIs(id: string): string | undefined {
  return sectionsOfChecklist[id]?.join('; ')
}
