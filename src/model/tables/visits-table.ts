import type {TableDescription} from '../column.ts'
import {conditionWords, rimWords, sampleWords} from '../column-words.ts'
import {otherHeads, remarks} from './shared-columns.ts'

export const visitsTable = {
  name: 'visits',
  file: 'visits.csv',
  row: 'one row per trap exposure, from opening to collection',
  columns: [
    {name: 'trap_id', kind: 'id', required: true, meaning: 'trap', otherHeads: otherHeads.trap_id},
    {
      name: 'opened',
      kind: 'moment',
      required: true,
      mayBeEmpty: true,
      meaning: 'when the trap was opened or emptied the time before',
      otherHeads: [
        'set',
        'set on',
        'date set',
        'date in',
        'date opened',
        'open',
        'start',
        'start date',
        'from',
        ...[
          'geöffnet',
          'geöffnet am',
          'aufgestellt',
          'von',
          'beginn',
          'pose',
          'date de pose',
          'début',
          'inicio'
        ]
      ]
    },
    {
      name: 'collected',
      kind: 'moment',
      required: true,
      meaning: 'when the catch was collected',
      otherHeads: otherHeads.collected
    },
    {
      name: 'condition',
      kind: 'word',
      words: conditionWords,
      ownWords: true,
      emptyMeans: 'intact',
      decisive: true,
      meaning: 'state in which the trap was found; empty means intact',
      otherHeads: ['state', 'status', 'trap condition', 'trap status', 'zustand', 'état', 'estado']
    },
    {
      name: 'failed_on',
      kind: 'moment',
      decisive: true,
      meaning: 'when the trap failed, where that is known'
    },
    {
      name: 'sample',
      kind: 'word',
      words: sampleWords,
      decisive: true,
      meaning: 'what became of the collection'
    },
    {name: 'round', kind: 'id', meaning: 'round of the season'},
    {name: 'rim', kind: 'word', words: rimWords, meaning: 'how the rim stood to the soil'},
    {name: 'fluid', kind: 'id', meaning: "fluid of this exposure, where it differs from the trap's"},
    {name: 'fluid_left_mm', kind: 'number', unit: 'mm', meaning: 'depth of the fluid found'},
    {name: 'cover_state', kind: 'text', meaning: 'state of the cover'},
    {name: 'collected_by', kind: 'text', meaning: 'who collected'},
    {name: 'sorted_by', kind: 'text', meaning: 'who sorted'},
    {name: 'sorted_on', kind: 'day', meaning: 'day of sorting'},
    {name: 'vertebrates_count', kind: 'count', meaning: 'vertebrates found in the trap'},
    {name: 'vertebrates_what', kind: 'text', meaning: 'which vertebrates'},
    {name: 'vertebrates_fate', kind: 'text', meaning: 'what became of them'},
    remarks
  ]
} as const satisfies TableDescription
