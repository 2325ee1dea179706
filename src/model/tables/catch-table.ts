import type {TableDescription} from '../column.ts'
import {lifeStageWords, sexWords} from '../column-words.ts'
import {otherHeads, remarks} from './shared-columns.ts'

export const catchTable = {
  name: 'catch',
  file: 'catch.csv',
  row: 'one row per taxon, sex and life stage of one collection',
  columns: [
    {
      name: 'trap_id',
      kind: 'id',
      required: true,
      mayBeEmpty: true,
      meaning: 'trap; may be empty for a catch pooled in the field',
      otherHeads: otherHeads.trap_id
    },
    {
      name: 'collected',
      kind: 'moment',
      required: true,
      mayBeEmpty: true,
      meaning: 'when the catch was collected; may be empty for a catch pooled in the field',
      otherHeads: otherHeads.collected
    },
    {
      name: 'taxon',
      kind: 'id',
      required: true,
      meaning: 'name as identified',
      otherHeads: otherHeads.taxon
    },
    {
      name: 'count',
      kind: 'count',
      required: true,
      meaning: 'individuals counted',
      otherHeads: [
        'n',
        'no',
        '#',
        'number',
        'individuals',
        'individual count',
        'no of individuals',
        'number of individuals',
        'abundance',
        'total',
        'quantity',
        ...['anzahl', 'individuen', 'nombre', 'effectif', 'número', 'aantal']
      ]
    },
    {
      name: 'site_id',
      kind: 'id',
      meaning: 'site, for catches pooled in the field',
      otherHeads: otherHeads.site_id
    },
    {name: 'round', kind: 'id', meaning: 'round, for catches pooled in the field'},
    {
      name: 'pooled_traps',
      kind: 'count',
      decisive: true,
      meaning: 'how many traps were pooled in the field'
    },
    {
      name: 'sex',
      kind: 'word',
      words: sexWords,
      meaning: 'sex',
      otherHeads: ['gender', 'geschlecht', 'sexe', 'sexo']
    },
    {
      name: 'life_stage',
      kind: 'word',
      words: lifeStageWords,
      emptyMeans: 'adult',
      decisive: true,
      meaning: 'life stage; empty means adult',
      otherHeads: ['stage', 'stadium', 'stade']
    },
    {name: 'wing_form', kind: 'text', meaning: 'wing form, such as macropterous or brachypterous'},
    {name: 'qualifier', kind: 'text', meaning: 'doubt about the name, such as cf.'},
    {name: 'identified_by', kind: 'text', meaning: 'who identified'},
    {name: 'identified_on', kind: 'day', meaning: 'day of identification'},
    {name: 'verified_by', kind: 'text', meaning: 'who checked the identification'},
    {
      name: 'sample_fraction',
      kind: 'fraction',
      decisive: true,
      meaning: 'part of the sample that was sorted'
    },
    {name: 'vial', kind: 'id', meaning: 'label of the vial'},
    {name: 'voucher', kind: 'text', meaning: 'number of the voucher specimen'},
    remarks
  ]
} as const satisfies TableDescription
