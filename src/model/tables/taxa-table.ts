import type {TableDescription} from '../column.ts'
import {otherHeads} from './shared-columns.ts'

export const taxaTable = {
  name: 'taxa',
  file: 'taxa.csv',
  row: 'one row per name used in the catch',
  optional: true,
  columns: [
    {
      name: 'taxon',
      kind: 'id',
      required: true,
      meaning: 'name as used in the catch',
      otherHeads: otherHeads.taxon
    },
    {name: 'rank', kind: 'text', meaning: 'rank of the name; morphospecies allowed'},
    {name: 'class', kind: 'text', meaning: 'class'},
    {name: 'order', kind: 'text', meaning: 'order'},
    {name: 'family', kind: 'text', meaning: 'family'},
    {name: 'genus', kind: 'text', meaning: 'genus'},
    {name: 'authority', kind: 'text', meaning: 'author and year of the name'},
    {name: 'english_name', kind: 'text', meaning: 'everyday name'},
    {name: 'guild', kind: 'text', meaning: 'feeding guild or another grouping of the study'},
    {name: 'body_length_mm', kind: 'number', unit: 'mm', meaning: 'typical body length'},
    {name: 'red_list', kind: 'text', meaning: 'red-list category'},
    {name: 'legal_status', kind: 'text', meaning: 'legal protection'},
    {
      name: 'sensitive',
      kind: 'word',
      words: ['1', '2', '3', '4'],
      isNumber: true,
      decisive: true,
      meaning: 'sensitivity category, 1 (extreme) to 4 (low), Chapman 2020'
    },
    {name: 'accepted_name', kind: 'text', meaning: 'accepted name, where this one is a synonym'},
    {name: 'note', kind: 'text', meaning: 'a line for readers about this kind'}
  ]
} as const satisfies TableDescription
