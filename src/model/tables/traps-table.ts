import type {TableDescription} from '../column.ts'
import {otherHeads, position, remarks} from './shared-columns.ts'

export const trapsTable = {
  name: 'traps',
  file: 'traps.csv',
  row: 'one row per trap',
  columns: [
    {
      name: 'trap_id',
      kind: 'id',
      required: true,
      meaning: 'short name of the trap',
      otherHeads: otherHeads.trap_id
    },
    {
      name: 'site_id',
      kind: 'id',
      required: true,
      meaning: 'site where the trap stands',
      otherHeads: otherHeads.site_id
    },
    {name: 'trap_type', kind: 'id', meaning: 'one of the trap types of study.yaml'},
    {name: 'fluid', kind: 'id', meaning: 'one of the fluids of study.yaml'},
    ...position,
    {name: 'x_m', kind: 'number', unit: 'm', meaning: 'metres east of the corner of the site'},
    {name: 'y_m', kind: 'number', unit: 'm', meaning: 'metres north of the corner of the site'},
    {name: 'installed', kind: 'day', meaning: 'day on which the trap was dug in'},
    {name: 'removed', kind: 'day', meaning: 'day on which the trap was taken out and its hole filled'},
    remarks
  ]
} as const satisfies TableDescription
