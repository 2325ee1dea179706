import {z} from 'zod'
import {measureSchema as measure} from './measure-schema.ts'

const weatherOf = {
  days: measure.describe('Days on record.'),
  rain: measure.describe('Sum in millimetres.'),
  coldest: measure.describe('Lowest daily minimum, in degrees Celsius.'),
  warmest: measure.describe('Highest daily maximum, in degrees Celsius.')
}

/** Rain and temperature while traps were open, from weather.csv. */
export const weatherSchema = z
  .strictObject({
    ...weatherOf,
    daysOfTrapping: measure.describe(
      'Days from the first opening to the day before the last collection, on record or not.'
    ),
    rounds: z.array(z.strictObject({id: z.string(), ...weatherOf}))
  })
  .meta({id: 'weather'})

export type WeatherResult = z.infer<typeof weatherSchema>
