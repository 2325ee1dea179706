import type {TableDefinition} from '../table.ts'
import {type StatedProperty, statedTable} from './stated-table.ts'

const properties: readonly StatedProperty[] = [
  ['substance', 'Substance'],
  ['dilution', 'Dilution'],
  ['volume_ml', 'Volume', 'ml'],
  ['depth_mm', 'Depth in the cup', 'mm'],
  ['detergent', 'Detergent'],
  ['bittering_agent', 'Bittering agent'],
  ['bait', 'Bait']
]

export const fluidsInUse: TableDefinition = {
  name: 'fluids-in-use',
  summary: 'The trap fluids in use, as study.yaml describes them.',
  tables: ({results}) => [statedTable('fluids-in-use', 'Fluid', results.protocol.fluids, properties)]
}
