import {z} from 'zod'
import {measureSchema as measure} from './measure-schema.ts'

/** The part of results.json that compares habitats: what the design supports, tests, and what to think of them. */
const text = z.string()
const textList = z.array(text)

/** How the arrangements of a permutation test came about; printed with its p. */
export const permutationsSchema = z
  .strictObject({
    distinct: measure.describe('Distinct arrangements that the design allows.'),
    tried: measure.describe('Arrangements tried.'),
    exhaustive: z.boolean().describe('Whether all were tried, or a random sample.'),
    floor: measure.describe('The smallest p that they allow.')
  })
  .meta({id: 'permutations'})

const support = {
  supported: z.boolean().describe('Whether the design supports this comparison.'),
  reasons: textList.describe('Why not: each completes "not compared, because ...".'),
  notes: textList.describe('What a reader must know of the comparison: whole sentences.')
}

const habitatRef = {id: text, label: text, style: z.number()}
const unitRef = {id: text, label: text, habitat: text, style: z.number()}

/** Activity-density of the habitats compared, one row per sampling unit, in the rounds that they share. */
export const comparisonSchema = z
  .strictObject({
    ...support,
    of: text.describe('Whose activity-density: all names, or the scope.'),
    unit: z.enum(['site', 'trap']),
    units: measure.describe('Sampling units compared.'),
    blocks: measure.describe('Blocks in the model; 0 where there are none.'),
    rounds: textList.describe('Rounds compared.'),
    roundsLeftOut: textList.describe('Rounds that some habitat lacks.'),
    habitats: z
      .array(
        z.strictObject({...habitatRef, units: measure, individuals: measure, net: measure, rate: measure})
      )
      .describe('The habitats compared, in the rounds compared.'),
    leftOut: z.array(
      z.strictObject({...habitatRef, reason: text.describe('Completes: left out, because ...')})
    ),
    method: z
      .enum(['negative binomial', 'Poisson', 'Kruskal-Wallis', 'none'])
      .describe('What the test rests on.'),
    message: text.optional().describe('Why it is not the negative binomial model: a sentence.'),
    theta: measure.describe(
      'Aggregation parameter of the negative binomial distribution, with standard error.'
    ),
    coefficients: z.array(
      z.strictObject({
        term: text,
        estimate: measure.describe('Natural logarithm; standard error given theta.')
      })
    ),
    test: z.strictObject({
      statistic: measure.describe('Likelihood-ratio statistic, or Kruskal-Wallis H.'),
      degreesOfFreedom: measure,
      p: measure.describe('By permutation.'),
      permutations: permutationsSchema
    }),
    ratios: z.array(
      z.strictObject({
        of: text,
        ofLabel: text,
        to: text,
        toLabel: text,
        ratio: measure.describe(
          'Rate of the first over rate of the second, with approximate interval and widened standard error.'
        ),
        p: measure,
        adjustedP: measure.describe('Holm-adjusted over all pairs.'),
        degreesOfFreedom: measure.describe(
          'Of the t distribution of interval and p: the residual ones of the model.'
        ),
        influential: z.strictObject(unitRef).optional().describe('The unit that moves this ratio most.'),
        without: measure.describe('The ratio without that unit.')
      })
    ),
    residualDegreesOfFreedom: measure.describe('Units less parameters of the model, blocks among them.'),
    residuals: z
      .array(
        z.strictObject({
          ...unitRef,
          individuals: measure,
          net: measure,
          expected: measure,
          residual: measure.describe('Pearson residual.')
        })
      )
      .describe('Of every unit, by habitat.')
  })
  .meta({id: 'comparison'})

/** Composition of the catch of the sites: tests between habitats, and pictures. */
export const compositionSchema = z
  .strictObject({
    ...support,
    dissimilarity: text.describe('Name of the measure.'),
    transformation: text.describe('What it was computed from.'),
    units: measure.describe('Sites or traps in the tests.'),
    leftOut: z.array(z.strictObject({...unitRef, reason: text})),
    permanova: z.strictObject({
      r2: measure,
      f: measure,
      groupDegreesOfFreedom: measure,
      residualDegreesOfFreedom: measure,
      p: measure,
      permutations: permutationsSchema
    }),
    dispersion: z.strictObject({
      f: measure,
      groupDegreesOfFreedom: measure,
      residualDegreesOfFreedom: measure,
      p: measure,
      permutations: permutationsSchema,
      habitats: z.array(
        z.strictObject({
          ...habitatRef,
          units: measure,
          distance: measure.describe('Mean distance to the centroid.')
        })
      ),
      negativeSquares: measure,
      negativeSquareRule: text,
      cautions: textList.describe('What unequal spread means for the p of the other test: whole sentences.')
    }),
    principalCoordinates: z.strictObject({
      notDefined: text.optional(),
      shares: z.array(measure).describe('Share of each axis shown.'),
      imaginary: measure.describe('What no axis can show.'),
      scores: z.array(
        z.strictObject({...unitRef, at: z.array(z.number()).describe('One coordinate for each axis.')})
      )
    }),
    nonMetricScaling: z.strictObject({
      stress: measure.describe('Kruskal’s stress-1 in two dimensions.'),
      starts: measure,
      startsAtBest: measure,
      scores: z.array(z.strictObject({...unitRef, at: z.array(z.number())}))
    })
  })
  .meta({id: 'composition'})

/** Indicator values of the species for habitats. */
export const indicatorsSchema = z
  .strictObject({
    ...support,
    tested: measure.describe('Species tested.'),
    permutations: permutationsSchema,
    adjustedFloor: measure.describe('Smallest p times species tested.'),
    withheld: z.boolean().describe('Whether p is not given, because that floor exceeds 0.05.'),
    message: text.optional().describe('Why p is not given: a sentence.'),
    species: z
      .array(
        z.strictObject({
          taxon: text,
          ...habitatRef,
          specificity: measure.describe('A: mean of the habitat over the sum of the means.'),
          fidelity: measure.describe('B: share of its units that hold the species.'),
          value: measure.describe('A times B.'),
          p: measure,
          adjustedP: measure
        })
      )
      .describe('Largest value first; id, label and style are those of the habitat.')
  })
  .meta({id: 'indicators'})

const roundOfSpecies = z.strictObject({
  round: text,
  opened: text.optional(),
  collected: text,
  individuals: measure,
  rate: measure
})

/** When the common species of a scope were caught: by rounds, never to the day. */
export const speciesSeasonSchema = z
  .strictObject({
    taxon: text,
    individuals: measure,
    rounds: measure.describe('Rounds in which it was caught.'),
    first: roundOfSpecies,
    last: roundOfSpecies,
    highest: roundOfSpecies.describe('Highest activity-density.'),
    rates: z
      .array(z.number().nullable())
      .describe('Individuals per 100 trap-nights in each round of `rounds`; null where no trap-night counts.')
  })
  .meta({id: 'speciesSeason'})

/** Names of the methods that the results rest on, for the methods text and its citations. */
export const methodUsedSchema = z.strictObject({id: text, name: text}).meta({id: 'methodUsed'})

export type PermutationsResult = z.infer<typeof permutationsSchema>
export type ComparisonResult = z.infer<typeof comparisonSchema>
export type CompositionResult = z.infer<typeof compositionSchema>
export type IndicatorsResult = z.infer<typeof indicatorsSchema>
export type SpeciesSeasonResult = z.infer<typeof speciesSeasonSchema>
export type MethodUsed = z.infer<typeof methodUsedSchema>
