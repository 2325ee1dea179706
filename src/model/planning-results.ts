import {z} from 'zod'
import {measureSchema as measure} from './measure-schema.ts'

const text = z.string()

/** What a season tells about the next one: estimates that take its rates, clumping and species to stay as they were. */
export const planningSchema = z
  .strictObject({
    of: text.describe('Whose catch: all names, or the scope.'),
    coverageTarget: measure.describe('Sample coverage to come to.'),
    halfWidthTarget: measure.describe('Half the width of the interval of a rate over the rate, to come to.'),
    theta: measure.describe('Aggregation of the catches of sampling units within habitats.'),
    habitats: z.array(
      z.strictObject({
        id: text,
        label: text,
        style: z.number(),
        net: measure.describe('Trap-nights of this season that count.'),
        units: measure.describe('Sampling units of this season.'),
        coverage: measure
          .optional()
          .describe('Sample coverage of this season; absent for all names together.'),
        nightsForCoverage: measure.optional().describe('Further trap-nights for the target coverage.'),
        halfWidth: measure.describe('Expected at the units and trap-nights of this season.'),
        nightsForRate: measure.describe('Further trap-nights at the same units for the target half-width.'),
        unitsForRate: measure.describe('Further units, each with the mean trap-nights of the present ones.')
      })
    ),
    detection: z.strictObject({
      ratio: measure.describe(
        'Smallest ratio of the rate of one habitat to that of the others that this layout would show.'
      ),
      raised: text
        .optional()
        .describe('Label of the habitat whose rate was raised: that with the least catch.'),
      level: measure.describe('Largest p that is called a difference.'),
      power: measure.describe('Share of the simulated seasons in which it is to be found.'),
      simulations: measure
    })
  })
  .meta({id: 'planning'})

export type PlanningResult = z.infer<typeof planningSchema>
