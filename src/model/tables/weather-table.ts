import type {TableDescription} from '../column.ts'

export const weatherTable = {
  name: 'weather',
  file: 'weather.csv',
  row: 'one row per day',
  optional: true,
  columns: [
    {name: 'date', kind: 'day', required: true, meaning: 'day', otherHeads: ['day']},
    {name: 'rain_mm', kind: 'number', unit: 'mm', meaning: 'rain of the day'},
    {name: 'temp_min_c', kind: 'number', unit: 'degrees Celsius', meaning: 'lowest temperature'},
    {name: 'temp_max_c', kind: 'number', unit: 'degrees Celsius', meaning: 'highest temperature'}
  ]
} as const satisfies TableDescription
