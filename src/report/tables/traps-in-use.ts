import type {TableDefinition} from '../table.ts'
import {type StatedProperty, statedTable} from './stated-table.ts'

const properties: readonly StatedProperty[] = [
  ['container', 'Container'],
  ['shape', 'Mouth'],
  ['rim_diameter_mm', 'Rim diameter', 'mm'],
  ['depth_mm', 'Depth', 'mm'],
  ['material', 'Material'],
  ['colour', 'Colour'],
  ['nested', 'Nested'],
  ['funnel', 'Funnel'],
  ['drainage', 'Drainage'],
  ['cover', 'Cover'],
  ['guard', 'Guard'],
  ['barrier', 'Barrier'],
  ['rim_plate', 'Rim plate']
]

export const trapsInUse: TableDefinition = {
  name: 'traps-in-use',
  summary: 'The trap types in use, as study.yaml describes them.',
  tables: ({results}) => [statedTable('traps-in-use', 'Trap type', results.protocol.trapTypes, properties)]
}
