import {z} from 'zod'

/**
 * What study.yaml may say. One description serves the reader (types), the check (validation) and the editor
 * (JSON Schema). Almost everything may be absent: absence shows in the reporting checklist, never as
 * invented text.
 */
const text = z.string().min(1)
const positive = z.number().positive()
const notNegative = z.number().min(0)
const isoDay = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'a day is written 2026-05-31')

const person = z.strictObject({
  name: text.describe('Name as it should be cited.'),
  orcid: text.optional().describe('ORCID iD, for example 0000-0002-1825-0097.'),
  role: text.optional().describe('What this person did.'),
  email: text.optional().describe('Address for questions; printed only when contact names this person.')
})

const habitat = z.strictObject({
  label: text.optional().describe('Name of the habitat for readers.'),
  assigned_by: text.optional().describe('How sites were assigned to this habitat.'),
  vegetation: text.optional().describe('Vegetation, in a few words.'),
  litter: text.optional().describe('Litter layer.'),
  soil: text.optional().describe('Soil.')
})

const trapType = z.strictObject({
  container: text.optional().describe('What the trap is, for example plastic cup.'),
  shape: text.optional().describe('Shape of the mouth, for example round.'),
  rim_diameter_mm: positive.optional().describe('Inner diameter of the mouth in millimetres.'),
  depth_mm: positive.optional().describe('Depth of the container in millimetres.'),
  material: text.optional().describe('Material of the container, for example polypropylene.'),
  colour: text.optional().describe('Colour of the container.'),
  nested: z.boolean().optional().describe('Whether one cup stands in another.'),
  funnel: z.union([z.boolean(), text]).optional().describe('Funnel: false, or what it is.'),
  drainage: z
    .union([z.boolean(), text])
    .optional()
    .describe('Drainage or overflow holes: false, or what they are.'),
  cover: z
    .union([z.boolean(), text])
    .optional()
    .describe('Roof over the trap: false, or material, size and height.'),
  guard: z
    .union([z.boolean(), text])
    .optional()
    .describe('Mesh or cage against vertebrates: false, or what it is.'),
  barrier: z
    .union([z.boolean(), text])
    .optional()
    .describe('Guidance barrier or drift fence: false, or what it is.'),
  rim_plate: z.union([z.boolean(), text]).optional().describe('Plate around the rim: false, or what it is.')
})

const fluid = z.strictObject({
  substance: text.optional().describe('For example propylene glycol, ethylene glycol, ethanol, water.'),
  dilution: text.optional().describe('Parts of fluid to parts of water, for example 1:2.'),
  volume_ml: positive.optional().describe('Volume in each trap in millilitres.'),
  depth_mm: positive.optional().describe('Depth in the cup in millimetres.'),
  detergent: z
    .union([z.boolean(), text])
    .optional()
    .describe('Detergent added: false, or what and how much.'),
  bittering_agent: z.union([z.boolean(), text]).optional().describe('Bittering agent: false, or which.'),
  bait: z.union([z.boolean(), text]).optional().describe('Bait: false, or what.')
})

const credit = z.union([z.literal('full'), z.literal('half'), z.literal('none'), z.number().min(0).max(1)])

const condition = z.strictObject({
  credit: credit.describe(
    'Share of the interval that counts as effort: full, half, none, or a number from 0 to 1.'
  ),
  meaning: text.optional().describe('What the word means.')
})

const scope = z.strictObject({
  label: text.optional().describe('Name of the scope for readers, for example ground beetles, adults.'),
  class: z
    .union([text, z.array(text)])
    .optional()
    .describe('Class or classes of taxa.csv.'),
  order: z
    .union([text, z.array(text)])
    .optional()
    .describe('Order or orders of taxa.csv.'),
  family: z
    .union([text, z.array(text)])
    .optional()
    .describe('Family or families of taxa.csv.'),
  taxa: z.array(text).optional().describe('Names that belong to the scope whatever their group.'),
  life_stages: z.array(text).optional().describe('Life stages that count; adult where absent.')
})

/** Scopes name files and figures, so their names are kept to signs that are safe everywhere. */
const scopeName = z
  .string()
  .regex(
    /^[A-Za-z][A-Za-z0-9_-]*$/,
    'a scope is named in letters, digits, - and _, such as ground-beetles; its `label` may be anything'
  )

const columnSource = z
  .union([
    text,
    z
      .strictObject({join: z.array(text).min(1), with: z.string().optional()})
      .describe('Several columns joined to one.'),
    z.strictObject({first_of: z.array(text).min(1)}).describe('The first filled of several columns.'),
    z.strictObject({value: z.union([z.string(), z.number()])}).describe('The same value for every row.')
  ])
  .describe(
    'A header of yours; {join: [Plot, Trap], with: "-"} for several columns joined to one, {first_of: [Name, Old name]} for the first that is filled, {value: wood} for the same in every row.'
  )

const table = <T extends z.ZodType>(value: T) =>
  z.strictObject({
    sites: value.optional(),
    traps: value.optional(),
    visits: value.optional(),
    catch: value.optional(),
    taxa: value.optional(),
    weather: value.optional()
  })

export const settingsSchema = z.strictObject({
  title: text.optional().describe('Title of the study.'),
  study_id: text.optional().describe('Short name, used for file names and identifiers.'),
  licence: text.optional().describe('Licence of the data as an SPDX identifier, for example CC-BY-4.0.'),
  issued: isoDay.optional().describe('Day that the documents carry; the last collection day where absent.'),
  people: z.array(person).optional().describe('Everybody who took part; the first ones are the authors.'),
  funding: text.optional().describe('Who paid for the study.'),
  thanks: text.optional().describe('Whom to thank.'),
  place: z
    .strictObject({
      country: text.optional().describe('Country of the study area.'),
      region: text.optional().describe('Region, county or province.'),
      description: text.optional().describe('The study area in a sentence or two.'),
      datum: text.optional().describe('Geodetic datum of all coordinates, for example WGS84.')
    })
    .optional()
    .describe('Where the study took place.'),
  season: z
    .strictObject({
      start: isoDay.optional().describe('First day of the season.'),
      end: isoDay.optional().describe('Last day of the season.')
    })
    .optional()
    .describe('First and last day; a visit outside them is a finding.'),
  site_selection: text.optional().describe('How the sites were chosen.'),
  habitats: z
    .record(text, z.union([text, habitat]))
    .optional()
    .describe('The habitats compared, by the word used in sites.csv.'),
  trap_types: z.record(text, trapType).optional().describe('Trap types, by the word used in traps.csv.'),
  fluids: z.record(text, fluid).optional().describe('Trap fluids, by the word used in traps.csv.'),
  layout: z
    .strictObject({
      geometry: text.optional().describe('How the traps of a site stand, for example line or grid.'),
      traps_per_site: z.number().int().positive().optional().describe('Traps at each site, as planned.'),
      spacing_m: positive.optional().describe('Distance between neighbouring traps in metres.'),
      edge_m: notNegative.optional().describe('Distance to the nearest habitat edge in metres.')
    })
    .optional()
    .describe('How the traps of a site stand.'),
  protocol: z
    .strictObject({
      rounds: z.number().int().positive().optional().describe('Rounds planned.'),
      interval_nights: positive.optional().describe('Nights planned between opening and collection.'),
      settling_nights: notNegative.optional().describe('Nights between digging in and opening.'),
      pooling: text.optional().describe('What was pooled, and when.')
    })
    .optional()
    .describe('The plan of the season; what was achieved comes from visits.csv.'),
  conditions: z
    .record(text, condition)
    .optional()
    .describe("Condition words of the study's own, or other credits for the usual ones."),
  sorting: z
    .strictObject({groups_done: z.array(text).optional().describe('Groups sorted from the samples.')})
    .optional()
    .describe('What was sorted from the samples.'),
  identification: z
    .strictObject({
      level: text.optional().describe('How far names go, for example adults to species.'),
      keys: z.array(text).optional().describe('Identification keys used, as they should be cited.'),
      nomenclature: text.optional().describe('Which names are followed.'),
      checklist: text.optional().describe('Checklist that the names come from.'),
      morphospecies: text.optional().describe('Whether and how morphospecies were used.'),
      verifier: text.optional().describe('Who checked the identifications.')
    })
    .optional()
    .describe('How the animals were named.'),
  vouchers: text.optional().describe('Where voucher specimens are kept, and how.'),
  permits: text.optional().describe('Permits and permissions.'),
  bycatch_fate: text.optional().describe('What happened to animals that were not studied.'),
  management: text.optional().describe('How the land is managed, for all sites.'),
  limitations: text.optional().describe('What the study cannot say.'),
  contact: text.optional().describe('Whom readers may ask, and how.'),
  target: z
    .strictObject({
      groups: z.array(text).optional().describe('Groups sought, for example [Carabidae, Araneae].'),
      life_stages: z.array(text).optional().describe('Life stages sought, for example [adult].'),
      all_recorded: z
        .boolean()
        .optional()
        .describe('Whether every animal of these groups was recorded; only then does a zero mean none.')
    })
    .optional()
    .describe('What was looked for: a zero means something only for this.'),
  privacy: z
    .strictObject({
      coordinates: z
        .union([
          z.enum(['exact', 'none', '0.001', '0.01', '0.1']),
          z.literal(0.001),
          z.literal(0.01),
          z.literal(0.1)
        ])
        .optional()
        .describe('How finely positions are shown to others, in degrees; 0.01 where absent.')
    })
    .optional()
    .describe('What others may see.'),
  analysis: z
    .strictObject({
      unit: z
        .enum(['site', 'trap'])
        .optional()
        .describe('Sampling unit; traps are subsamples of a site, so site unless you can argue otherwise.'),
      unit_reason: text.optional().describe('Why traps may stand as sampling units.'),
      scopes: z
        .record(scopeName, scope)
        .optional()
        .describe('Groups of taxa whose diversity is analysed, each on its own.'),
      seed: z
        .number()
        .int()
        .optional()
        .describe('Seed of the random streams; 1 where absent. The same seed gives the same intervals.'),
      confidence: z
        .number()
        .min(0.5)
        .max(0.999)
        .optional()
        .describe('Confidence of the intervals; 0.95 where absent.'),
      replicates: z
        .number()
        .int()
        .min(10)
        .max(100_000)
        .optional()
        .describe('Bootstrap replicates; 1000 where absent.'),
      permutations: z
        .number()
        .int()
        .min(99)
        .max(1_000_000)
        .optional()
        .describe('Permutations of the tests; 9999 where absent.'),
      planning: z
        .strictObject({
          coverage: z
            .number()
            .min(0.5)
            .max(0.9999)
            .optional()
            .describe('Sample coverage that another season is to reach; 0.99 where absent.'),
          half_width: z
            .number()
            .min(0.01)
            .max(2)
            .optional()
            .describe(
              'Half the width of the interval of an activity-density over the activity-density, to be reached; 0.25 where absent.'
            )
        })
        .optional()
        .describe('What another season is planned for.')
    })
    .optional()
    .describe('How the numbers are made.'),
  report: z
    .strictObject({
      language: z
        .enum(['en-GB', 'en-US'])
        .optional()
        .describe(
          'Language of the pages and style of their dates; en-GB where absent. Templates in a folder of that name go before the others.'
        ),
      text: z
        .record(text, text)
        .optional()
        .describe('Place in a document, and the Markdown file of yours that belongs there.')
    })
    .optional()
    .describe('Choices of the documents.'),
  rules: z
    .record(
      text,
      z.strictObject({
        severity: z
          .enum(['error', 'caution', 'note', 'silent'])
          .describe('How the rule weighs in this study.'),
        reason: text.describe('Printed in the data-quality appendix.')
      })
    )
    .optional()
    .describe('Rules judged otherwise in this study, with the reason.'),
  files: table(text).optional().describe('File names of your own.'),
  columns: table(z.record(text, columnSource))
    .optional()
    .describe("Column headers of your own: the project's name, then yours."),
  words: z
    .record(text, z.record(z.string(), z.union([z.string(), z.number()])))
    .optional()
    .describe('Codes of your own, by column; an empty code stands for an empty cell.'),
  dates: z.enum(['dmy', 'mdy']).optional().describe('Order of day and month in your dates.'),
  decimal: z
    .enum(['point', 'comma'])
    .optional()
    .describe('Decimal sign of your numbers; settles whether 1,234 is above a thousand.'),
  encoding: z
    .enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'])
    .optional()
    .describe('Encoding of the tables, where it is not found out rightly.'),
  catch: z
    .strictObject({
      shape: z
        .enum(['long', 'wide'])
        .optional()
        .describe('long: one row per kind; wide: one column per kind.'),
      blanks: z.enum(['zero', 'unknown']).optional().describe('What an empty cell of a wide table means.')
    })
    .optional()
    .describe('How the catch table is laid out.'),
  no_catch_rows: z
    .enum(['empty', 'unsorted', 'lost'])
    .optional()
    .describe('What a visit without catch rows and without a sample word means.'),
  planning: z
    .strictObject({
      costs: z
        .strictObject({
          per_visit: notNegative.optional().describe('Cost of emptying one trap once.'),
          per_trap_night: notNegative.optional().describe('Cost of one trap for one night.'),
          per_sample: notNegative.optional().describe('Cost of sorting and naming one sample.'),
          currency: text.optional().describe('Currency of the costs, for example EUR.')
        })
        .optional()
        .describe('What the next season would cost.')
    })
    .optional()
    .describe('For the plan of the next season.')
})

export type Settings = z.infer<typeof settingsSchema>
export type ScopeSetting = z.infer<typeof scope>
