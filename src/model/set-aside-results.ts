import {z} from 'zod'
import {measureSchema as measure} from './measure-schema.ts'

const text = z.string()
const habitatRef = {id: text, label: text, style: z.number()}

const headline = z.strictObject({
  individuals: measure,
  rate: measure,
  species: measure.optional().describe('Species caught; absent for all names together.'),
  chao1: measure.optional()
})

/** What rows that were set aside hold, as far as it can be read. */
export const setAsideSchema = z
  .strictObject({
    rows: measure.describe('Rows of the catch table that were set aside.'),
    repeated: measure.describe('Those of them that repeat another row, whose animals are counted there.'),
    readable: measure.describe('Those of the others with a whole count.'),
    individuals: measure.describe('Individuals in these.'),
    withoutThem: measure.describe('Individuals recorded in the rows in use.'),
    withThem: measure.describe('Both together.'),
    shareSetAside: measure.describe('Of both together.'),
    counted: measure.describe('Rows set aside with a whole count and a trap or site in use.'),
    effect: z
      .array(
        z.strictObject({
          of: text.describe('All names, or the label of a scope.'),
          habitats: z.array(z.strictObject({...habitatRef, without: headline, withThem: headline}))
        })
      )
      .describe('Headline numbers without and with these rows; empty where there are none.')
  })
  .meta({id: 'setAside'})

export type SetAsideResult = z.infer<typeof setAsideSchema>
