import type {WeatherResult} from '../../model/results.ts'
import type {Cell, TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'

export const weather: TableDefinition = {
  name: 'weather',
  summary: 'Rain and temperature in each round, from weather.csv.',
  tables: ({results: {weather: told}}) => [
    {
      name: 'weather',
      columns: [
        wordColumn('Round'),
        numberColumn('On record', 'days'),
        numberColumn('Rain', 'mm'),
        numberColumn('Coldest', '°C'),
        numberColumn('Warmest', '°C')
      ],
      rows: (told?.rounds ?? []).map((round) => [cell.text(round.id), ...cells(round)]),
      foot: told === undefined ? [] : [[cell.text('All rounds'), ...cells(told)]],
      empty: 'No weather is on record.'
    }
  ]
}

function cells({
  days,
  rain,
  coldest,
  warmest
}: Omit<WeatherResult, 'daysOfTrapping' | 'rounds'>): readonly Cell[] {
  return [days, rain, coldest, warmest].map(cell.measure)
}
