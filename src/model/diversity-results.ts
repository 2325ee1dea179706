import {z} from 'zod'
import {measureSchema as measure} from './measure-schema.ts'

/** The part of results.json on the diversity of one assemblage. */
const text = z.string()
const order = z
  .union([z.literal(0), z.literal(1), z.literal(2)])
  .describe('Order of diversity q: all, common, dominant species.')
const numbers = z.array(z.number())

const curvePoint = z.strictObject({
  size: z.number().describe('Individuals.'),
  value: z.number().describe('Effective species.'),
  beyond: z.boolean().describe('Extrapolated beyond the catch.'),
  low: z.number().optional().describe('Lower end of the band.'),
  high: z.number().optional().describe('Upper end of the band.')
})

/** A curve as columns of equal length, to keep the file small; six significant figures. */
export const curveSchema = z
  .strictObject({
    order,
    at: numbers.describe('Sampling units, or sample coverage, in rising order.'),
    values: numbers.describe('Effective species.'),
    low: numbers.describe('Lower end of the band; empty where there is none.'),
    high: numbers.describe('Upper end of the band; empty where there is none.'),
    within: z
      .number()
      .describe(
        'How many of the points lie within the catch: the last of them is the catch itself, the others are extrapolated.'
      )
  })
  .meta({id: 'curve'})

const hillSchema = z
  .strictObject({
    q0: z.strictObject({observed: measure, asymptotic: measure}),
    q1: z.strictObject({observed: measure, asymptotic: measure}),
    q2: z.strictObject({observed: measure, asymptotic: measure})
  })
  .describe('Hill numbers; asymptotic ones with standard error and interval.')

/** Diversity from occurrences in sampling units: who was there, not how many. */
export const incidenceSchema = z
  .strictObject({
    unit: z
      .enum(['site-round', 'trap-round'])
      .describe('What a sampling unit is: a site in a round, or a trap in a round.'),
    units: measure.describe('Sampling units with credited effort (T).'),
    incidences: measure.describe('Occurrences: species by sampling units (U).'),
    species: measure,
    uniques: measure.describe('Species found in exactly one sampling unit (Q1).'),
    duplicates: measure.describe('Species found in exactly two sampling units (Q2).'),
    coverage: measure,
    chao2: measure.describe('A lower bound.'),
    ice: measure,
    jackknife1: measure,
    jackknife2: measure,
    hill: hillSchema,
    curves: z
      .array(curveSchema)
      .describe('Rarefaction and extrapolation by number of sampling units; none for sites.'),
    coverageCurves: z.array(curveSchema).describe('The same by coverage; none for sites.')
  })
  .meta({id: 'incidence'})

/** One line of the long table of estimates of the number of species. */
export const estimatorSchema = z
  .strictObject({
    estimator: text.describe('Chao1, ACE, Chao2, ICE, Jackknife 1, Jackknife 2.'),
    variant: text.describe('Which form of it, in words.'),
    basedOn: text.describe('individuals, or what the sampling units are.'),
    kind: z.enum(['lower bound', 'estimate']),
    estimate: measure.describe('With standard error and interval.')
  })
  .meta({id: 'estimator'})

/** The diversity of one assemblage: the pooled catch of a habitat, a site or the study, within a scope. */
export const assemblageSchema = z
  .strictObject({
    of: z.enum(['study', 'habitat', 'site']),
    id: text,
    label: text,
    style: z.number().describe('Place of its habitat in the palette.'),
    sites: measure,
    net: measure,
    individuals: measure,
    species: measure,
    singletons: measure,
    doubletons: measure,
    coverage: measure,
    chao1: measure,
    ace: measure,
    hill: hillSchema,
    shannon: measure,
    giniSimpson: measure,
    pielou: measure,
    bergerParker: measure,
    /** Species and Chao1 with every name counted, also those that a finer name within it already stands for. */
    allNames: z.strictObject({species: measure, chao1: measure}),
    incidence: incidenceSchema,
    estimators: z.array(estimatorSchema).describe('All estimates of the number of species, one line each.'),
    profile: z
      .strictObject({
        orders: numbers.describe('Orders from 0 to 3.'),
        observed: numbers.describe('Observed Hill numbers at these orders; empty without catch.'),
        asymptotic: z
          .array(
            z.strictObject({
              order,
              value: z.number(),
              low: z.number().optional(),
              high: z.number().optional()
            })
          )
          .describe('Asymptotic estimates where defined.')
      })
      .describe('Diversity profile; both lists are empty for sites.'),
    curves: z
      .array(z.strictObject({order, points: z.array(curvePoint)}))
      .describe('Rarefaction and extrapolation by number of individuals; none for sites.'),
    coverageCurves: z.array(curveSchema).describe('The same by coverage; none for sites.'),
    ranks: z.array(
      z.strictObject({rank: z.number(), taxon: text, individuals: z.number(), share: z.number()})
    )
  })
  .meta({id: 'assemblage'})

const atCoverage = {
  id: text,
  label: text,
  style: z.number(),
  size: measure.describe('Individuals that this coverage takes; a real number, shown whole.'),
  beyond: z.boolean().describe('Whether that is more than were caught.'),
  q0: measure,
  q1: measure,
  q2: measure
}

const leftOutOfComparison = z.strictObject({
  id: text,
  label: text,
  reason: text.describe('Completes: left out, because ...')
})

/** Diversity at the largest coverage that every habitat compared reaches with at most twice its catch. */
export const equalCoverageSchema = z
  .strictObject({
    coverage: measure.describe('The common coverage, or why there is none.'),
    habitats: z
      .array(z.strictObject(atCoverage))
      .describe('Those compared; intervals describe the pooled catch of the sites.'),
    leftOut: z.array(leftOutOfComparison).describe('Habitats that are not compared.'),
    sites: z
      .array(z.strictObject({...atCoverage, habitat: text}))
      .describe('Sites at the same coverage, where defined; without intervals.')
  })
  .meta({id: 'equalCoverage'})

/** Alpha, beta and gamma diversity, multiplicative, every unit weighing the same. */
export const partitionSchema = z
  .strictObject({
    id: text.describe('habitats, or the id of the habitat whose sites are the units.'),
    label: text.describe('between habitats, or: between sites of oak wood.'),
    units: measure.describe('Sites or habitats.'),
    leftOut: z.array(leftOutOfComparison).describe('Units without catch.'),
    orders: z.array(z.strictObject({order, alpha: measure, beta: measure, gamma: measure}))
  })
  .meta({id: 'partition'})

const triangle = z.array(numbers).describe('Lower triangle: row i has its values with items 0 to i - 1.')

/** Dissimilarities of every pair of sites, or of habitats. */
export const dissimilaritiesSchema = z
  .strictObject({
    items: z
      .array(z.strictObject({id: text, label: text, habitat: text, style: z.number()}))
      .describe('Sites or habitats with catch, in order.'),
    leftOut: z.array(leftOutOfComparison),
    notListed: text.optional().describe('Why the triangles are empty: completes "not listed, because ...".'),
    sorensen: triangle,
    jaccard: triangle,
    brayCurtis: triangle,
    turnover: triangle,
    nestedness: triangle,
    meanWithin: measure.describe('Mean Bray-Curtis dissimilarity of two sites of one habitat.'),
    meanBetween: measure.describe(
      'Mean Bray-Curtis dissimilarity of two sites (or habitats) of different habitats.'
    ),
    multiple: z
      .strictObject({sorensen: measure, turnover: measure, nestedness: measure})
      .describe('Multiple-site dissimilarity and its parts.'),
    multipleWithin: z
      .array(
        z.strictObject({
          id: text,
          label: text,
          style: z.number(),
          units: measure,
          sorensen: measure,
          turnover: measure,
          nestedness: measure
        })
      )
      .describe('The same among the sites of each habitat; empty between habitats.')
  })
  .meta({id: 'dissimilarities'})

export type AssemblageResult = z.infer<typeof assemblageSchema>
export type CurveResult = z.infer<typeof curveSchema>
export type IncidenceResult = z.infer<typeof incidenceSchema>
export type EstimatorResult = z.infer<typeof estimatorSchema>
export type EqualCoverageResult = z.infer<typeof equalCoverageSchema>
export type PartitionResult = z.infer<typeof partitionSchema>
export type DissimilaritiesResult = z.infer<typeof dissimilaritiesSchema>
