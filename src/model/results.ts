import {z} from 'zod'
import {
  comparisonSchema,
  compositionSchema,
  indicatorsSchema,
  methodUsedSchema,
  speciesSeasonSchema
} from './comparison-results.ts'
import {
  assemblageSchema,
  dissimilaritiesSchema,
  equalCoverageSchema,
  partitionSchema
} from './diversity-results.ts'
import {makeUpSchema, sexesAndStagesSchema} from './make-up-results.ts'
import {siteMapSchema, trapLayoutSchema} from './map-results.ts'
import {measureSchema as measure} from './measure-schema.ts'
import {planningSchema} from './planning-results.ts'
import {setAsideSchema} from './set-aside-results.ts'
import {weatherSchema} from './weather-results.ts'

/**
 * Everything that a report may print, and all of results.json. One description gives the types, the
 * JSON Schema of the file and the names that templates can call.
 */
const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/)
  .describe('A calendar day, ISO 8601.')
const text = z.string()

/** Effort of a trap, site, habitat, round or the whole study, in trap-nights. */
export const effortSchema = z
  .strictObject({
    exposures: measure.describe('Exposures on record.'),
    planned: measure,
    exposed: measure.describe('Nights between opening and collection, before any credit.'),
    net: measure.describe('Nights that count: exposure times credit, catch on record.'),
    unsorted: measure.describe('Nights of samples not sorted yet.'),
    lost: measure.describe('Planned less net less unsorted.'),
    shareLost: measure
  })
  .meta({id: 'effort'})

/** Catch of a trap, site, habitat, round or the whole study. Counts as counted, never raised. */
export const catchSchema = z
  .strictObject({
    individuals: measure.describe('Individuals in the rates.'),
    names: measure.describe('Different names among them.'),
    outsideEffort: measure.describe('Individuals caught outside the effort.'),
    total: measure.describe('Both together.'),
    rate: measure.describe('Activity-density: individuals per 100 trap-nights.'),
    rimRate: measure.optional().describe('The same per metre of rim, where trap types differ.')
  })
  .meta({id: 'catch'})

export const scopeSchema = z
  .strictObject({
    id: text,
    label: text,
    leftOut: z.array(
      z.strictObject({
        taxon: text,
        individuals: measure,
        reason: text.describe('Completes: left out of diversity because ...')
      })
    ),
    leftOutIndividuals: measure,
    study: assemblageSchema,
    habitats: z.array(assemblageSchema),
    sites: z.array(assemblageSchema),
    /** Whether observed species numbers may be ranked at all: only at equal effort and equal coverage. */
    rankable: z.boolean(),
    equalCoverage: equalCoverageSchema,
    partitions: z.array(partitionSchema).describe('Between habitats, and between the sites of each habitat.'),
    dissimilarities: z.strictObject({sites: dissimilaritiesSchema, habitats: dissimilaritiesSchema}),
    comparison: comparisonSchema,
    composition: compositionSchema,
    indicators: indicatorsSchema,
    season: z.array(speciesSeasonSchema).describe('Common species, most numerous first.'),
    guilds: makeUpSchema,
    bodySizes: makeUpSchema,
    planning: planningSchema
  })
  .meta({id: 'scope'})

export const habitatSchema = z
  .strictObject({
    id: text,
    label: text,
    style: z.number(),
    assignedBy: text.optional(),
    vegetation: text.optional(),
    litter: text.optional(),
    soil: text.optional(),
    sites: measure,
    traps: measure,
    rounds: measure,
    effort: effortSchema,
    catch: catchSchema,
    /** Groups of the study (scopes) with their own rates. */
    groups: z.array(z.strictObject({id: text, label: text, catch: catchSchema})),
    shareOfCatch: measure
  })
  .meta({id: 'habitat'})

export const vertebratesSchema = z
  .strictObject({
    recorded: z.boolean().describe('Whether vertebrates were recorded at all.'),
    count: measure,
    perThousand: measure.describe('Per 1,000 trap-nights of exposure.'),
    notLooked: measure.describe('Exposures of which nothing says whether vertebrates were found.'),
    events: z.array(
      z.strictObject({
        site: text,
        trap: text,
        collected: day,
        count: measure,
        what: text.optional(),
        fate: text.optional()
      })
    )
  })
  .meta({id: 'vertebrates'})

export const siteSchema = z
  .strictObject({
    id: text,
    name: text,
    habitat: text,
    habitatLabel: text,
    style: z.number(),
    locality: text.optional(),
    region: text.optional(),
    country: text.optional(),
    management: text.optional(),
    soil: text.optional(),
    remarks: text.optional(),
    /** Position as others may see it. */
    position: z.strictObject({
      shown: z.enum(['exact', 'rounded', 'withheld', 'not recorded']),
      latitude: text.optional(),
      longitude: text.optional(),
      precision: text.optional().describe('Size of the grid in degrees.'),
      because: text.optional().describe('Why it is not exact: completes "because ...".')
    }),
    layout: trapLayoutSchema,
    structure: z.array(measure).describe('Habitat structure and elevation, as recorded.'),
    traps: measure,
    rounds: measure,
    firstOpened: day.optional(),
    lastCollected: day.optional(),
    removal: z.strictObject({
      recorded: measure,
      notRecorded: measure,
      gone: measure.describe(
        'Times that a trap was found to be missing: what is left of it may still lie there.'
      ),
      lastRemoved: day.optional()
    }),
    effort: effortSchema,
    lostBecause: z.array(text).describe('Why trap-nights were lost; each completes: lost, because ...'),
    kinds: z
      .strictObject({
        species: measure,
        others: measure.describe(
          'Individuals whose name tells only a group of which finer names were caught.'
        )
      })
      .describe('The catch in the rates as a reader counts kinds: what counts as a species, and the rest.'),
    catch: catchSchema,
    groups: z.array(z.strictObject({id: text, label: text, catch: catchSchema, species: measure})),
    /** Names of this site, most numerous first; sensitive ones that may not be shown are counted, not named. */
    taxa: z.array(z.strictObject({taxon: text, individuals: measure, total: measure})),
    withheldTaxa: measure,
    worthKnowing: z
      .array(
        z.strictObject({
          taxon: text,
          englishName: text.optional(),
          note: text,
          total: measure
        })
      )
      .describe(
        'Kinds of which taxa.csv has something to tell: listed ones first, then the most numerous; at most five.'
      ),
    listed: z
      .array(z.strictObject({taxon: text, status: text, total: measure}))
      .describe('Protected or red-listed kinds.'),
    vertebrates: vertebratesSchema
  })
  .meta({id: 'site'})

export const taxonSchema = z
  .strictObject({
    taxon: text,
    rank: text.optional(),
    class: text.optional(),
    order: text.optional(),
    family: text.optional(),
    authority: text.optional(),
    englishName: text.optional(),
    guild: text.optional(),
    bodyLengthMm: z.number().optional(),
    redList: text.optional(),
    legalStatus: text.optional(),
    sensitive: z.number().optional(),
    note: text.optional(),
    inTaxaTable: z.boolean(),
    individuals: measure,
    outsideEffort: measure,
    total: measure,
    share: measure.describe('Of all individuals in the rates.'),
    sites: measure,
    rate: measure,
    females: measure,
    males: measure,
    immatures: measure.describe('Larvae, juveniles and other life stages before the adult.'),
    habitats: z.array(
      z.strictObject({id: text, individuals: measure, outsideEffort: measure, sites: measure, rate: measure})
    ),
    bySite: z.array(z.strictObject({id: text, total: measure})),
    firstRound: text.optional(),
    lastRound: text.optional()
  })
  .meta({id: 'taxon'})

export const roundSchema = z
  .strictObject({
    id: text,
    firstOpened: day.optional(),
    lastCollected: day,
    effort: effortSchema,
    catch: catchSchema,
    habitats: z.array(
      z.strictObject({id: text, label: text, style: z.number(), effort: effortSchema, catch: catchSchema})
    )
  })
  .meta({id: 'round'})

const textList = z.array(text)

export const designSchema = z
  .strictObject({
    unit: z.enum(['site', 'trap']),
    unitDecidedBy: text.optional(),
    habitats: measure,
    sites: measure,
    traps: measure,
    rounds: measure,
    exposures: measure,
    /** Habitats with a single site: described, never tested. */
    singleSiteHabitats: textList,
    /** Blocks of the sites, where every site has one on record. */
    blocks: measure.optional(),
    /** Habitats with several sites, all of them in one of several blocks: habitat and block cannot be told apart. */
    oneBlockHabitats: textList.optional(),
    /** What differs in line with habitat, so that catch cannot be told from it. */
    confounded: z.array(z.strictObject({what: text, detail: text})),
    /** Rounds that every habitat shares, and those that some lack. */
    sharedRounds: measure,
    unsharedRounds: textList,
    supportsComparison: z.boolean(),
    nearestWithin: measure.describe('Median distance of a site to the nearest one of its own habitat.'),
    nearestBetween: measure.describe('Median distance of a site to the nearest one of another habitat.'),
    nearestAny: z.strictObject({smallest: measure, largest: measure})
  })
  .meta({id: 'design'})

export const protocolSchema = z
  .strictObject({
    effortKnownFor: z
      .enum(['exposures', 'sites'])
      .describe('sites: old data that give one effort figure for each site and know no traps or visits.'),
    firstOpened: day.optional(),
    lastCollected: day.optional(),
    intervalShortest: measure,
    intervalMedian: measure,
    intervalLongest: measure,
    roundsAchieved: measure,
    firstInstalled: day.optional().describe('Day on which the first trap was dug in.'),
    lastInstalled: day.optional(),
    settlingShortest: measure,
    settlingLongest: measure,
    positionUncertainty: measure.describe('Largest stated uncertainty of a position of a site.'),
    catchRecords: measure,
    identifiedBy: z.array(z.strictObject({who: text, records: measure})),
    verifiedBy: z.array(z.strictObject({who: text, records: measure})),
    verifiedRecords: measure,
    voucherRecords: measure.describe('Records of the catch that name a voucher specimen.'),
    trapsPerSiteSmallest: measure,
    trapsPerSiteLargest: measure,
    nightsFrom: z.enum(['dates', 'clock times']),
    mixedTimes: z.boolean(),
    trapTypes: z
      .array(z.strictObject({id: text, traps: measure, stated: z.record(text, z.unknown())}))
      .describe('Trap types in use, with what study.yaml says of them.'),
    fluids: z.array(z.strictObject({id: text, traps: measure, stated: z.record(text, z.unknown())})),
    conditions: z
      .array(
        z.strictObject({
          condition: text,
          meaning: text.optional(),
          credit: text,
          exposures: measure,
          exposed: measure,
          net: measure
        })
      )
      .describe('Exposures by the state in which the trap was found.'),
    lostExposures: z
      .array(
        z.strictObject({
          site: text,
          trap: text,
          opened: day,
          collected: day,
          condition: text,
          sample: text.optional(),
          exposed: measure,
          net: measure
        })
      )
      .describe(
        'Exposures that earned fewer trap-nights than they lasted; those not sorted yet are not among them.'
      ),
    sampleFractionUsed: z.boolean(),
    pooled: z.boolean(),
    remarksOnNights: text.optional()
  })
  .meta({id: 'protocol'})

export const sensitivitySchema = z
  .strictObject({
    variants: z.array(
      z.strictObject({
        id: z.enum(['declared', 'half', 'full', 'without']),
        label: text,
        habitats: z.array(
          z.strictObject({id: text, label: text, net: measure, individuals: measure, rate: measure})
        )
      })
    ),
    smallestShareLost: measure,
    largestShareLost: measure,
    differenceInShareLost: measure,
    lossDiffers: z
      .boolean()
      .describe('Whether loss differs between habitats by more than 10 percentage points.'),
    setAside: setAsideSchema
  })
  .meta({id: 'sensitivity'})

export const recordsSchema = z
  .strictObject({
    tables: z.array(
      z.strictObject({
        table: text,
        file: text,
        readAs: text.describe('Encoding and separator that the file was read with.'),
        read: measure,
        used: measure,
        setAside: measure,
        reasons: z.array(z.strictObject({code: text, rows: measure}))
      })
    ),
    findings: z.strictObject({errors: measure, cautions: measure, notes: measure, total: measure}),
    readRows: measure,
    usedRows: measure,
    setAsideRows: measure,
    leftUnrecorded: measure.describe('Exposures set aside because nothing says what became of the sample.'),
    byCode: z.array(z.strictObject({code: text, severity: text, findings: measure, summary: text})),
    judgedOtherwise: z
      .array(z.strictObject({code: text, severity: text, reason: text, findings: measure}))
      .describe('Rules that the study judges otherwise, with its reasons.')
  })
  .meta({id: 'records'})

export const checklistSchema = z
  .array(
    z.strictObject({
      id: text,
      item: text,
      status: z.enum(['reported', 'partly', 'not applicable', 'not recorded']),
      detail: text
    })
  )
  .meta({id: 'checklist'})

export const resultsSchema = z.strictObject({
  format: z.literal('pitfolio-results'),
  formatVersion: z.literal(1),
  /** What study.yaml states, as written, and where: '/title' -> 'study.yaml:3:8'. */
  stated: z.record(text, z.unknown()),
  statedAt: z.record(text, text),
  issued: day.optional(),
  season: text.describe('Year or years of the season.'),
  confidence: z.number(),
  seed: z.number(),
  replicates: z.number().describe('Bootstrap replicates.'),
  permutations: z.number().describe('Most arrangements that a permutation test tries.'),
  methodsUsed: z.array(methodUsedSchema).describe('The methods that these results rest on, and only those.'),
  records: recordsSchema,
  design: designSchema,
  protocol: protocolSchema,
  effort: effortSchema,
  catch: catchSchema,
  vertebrates: vertebratesSchema,
  sensitivity: sensitivitySchema,
  habitats: z.array(habitatSchema),
  sites: z.array(siteSchema),
  map: siteMapSchema,
  weather: weatherSchema.optional(),
  rounds: z.array(roundSchema),
  traps: z.array(
    z.strictObject({id: text, site: text, habitat: text, effort: effortSchema, catch: catchSchema})
  ),
  taxa: z.array(taxonSchema),
  scopes: z.array(scopeSchema),
  /** Activity-density of all names together, compared between habitats. */
  comparison: comparisonSchema,
  planning: planningSchema,
  sexesAndStages: sexesAndStagesSchema,
  checklist: checklistSchema
})

export type Results = z.infer<typeof resultsSchema>
export type EffortResult = z.infer<typeof effortSchema>
export type CatchResult = z.infer<typeof catchSchema>
export type ScopeResult = z.infer<typeof scopeSchema>
export type HabitatResult = z.infer<typeof habitatSchema>
export type SiteResult = z.infer<typeof siteSchema>
export type {WeatherResult} from './weather-results.ts'
export type SiteMapResult = z.infer<typeof siteMapSchema>
export type TaxonResult = z.infer<typeof taxonSchema>
export type RoundResult = z.infer<typeof roundSchema>
export type DesignResult = z.infer<typeof designSchema>
export type ProtocolResult = z.infer<typeof protocolSchema>
export type SensitivityResult = z.infer<typeof sensitivitySchema>
export type RecordsResult = z.infer<typeof recordsSchema>
export type VertebratesResult = z.infer<typeof vertebratesSchema>
export type ChecklistResult = z.infer<typeof checklistSchema>
export type {
  ComparisonResult,
  CompositionResult,
  IndicatorsResult,
  MethodUsed,
  PermutationsResult,
  SpeciesSeasonResult
} from './comparison-results.ts'
export type {
  AssemblageResult,
  CurveResult,
  DissimilaritiesResult,
  EqualCoverageResult,
  EstimatorResult,
  IncidenceResult,
  PartitionResult
} from './diversity-results.ts'
export type {MakeUpResult, SexesAndStagesResult} from './make-up-results.ts'
export type {PlanningResult} from './planning-results.ts'
export type {SetAsideResult} from './set-aside-results.ts'
