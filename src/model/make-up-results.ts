import {z} from 'zod'
import {measureSchema as measure} from './measure-schema.ts'

const text = z.string()
const textList = z.array(text)
const habitatRef = {id: text, label: text, style: z.number()}

const classes = z.array(
  z.strictObject({
    class: text,
    individuals: measure,
    share: measure.describe('Of those of which it is known, with interval.'),
    species: measure
  })
)

/** Guilds, or classes of body size, in the catch of each habitat. */
export const makeUpSchema = z
  .strictObject({
    recorded: z.boolean().describe('Whether taxa.csv tells it of any name of the scope.'),
    known: measure.describe('Individuals of which it is known.'),
    unknown: measure,
    classes: textList.describe('In order.'),
    study: classes,
    habitats: z.array(z.strictObject({...habitatRef, classes}))
  })
  .meta({id: 'makeUp'})

const sexCounts = {
  females: measure,
  males: measure,
  undetermined: measure,
  shareFemale: measure.describe('Of those whose sex is known, with interval.')
}
const stageCounts = z.array(
  z.strictObject({
    stage: text,
    individuals: measure,
    share: measure.describe('Of all individuals of the taxon, with interval.')
  })
)

/** Sexes and life stages of the taxa of which they were recorded, over the whole catch. */
export const sexesAndStagesSchema = z
  .strictObject({
    sexes: z
      .array(
        z.strictObject({
          taxon: text,
          ...sexCounts,
          habitats: z.array(z.strictObject({...habitatRef, ...sexCounts}))
        })
      )
      .describe('Taxa with at least one animal whose sex is known; adults.'),
    stages: z
      .array(
        z.strictObject({
          taxon: text,
          stages: stageCounts,
          habitats: z.array(z.strictObject({...habitatRef, stages: stageCounts}))
        })
      )
      .describe('Taxa with an animal before the adult stage.')
  })
  .meta({id: 'sexesAndStages'})

export type MakeUpResult = z.infer<typeof makeUpSchema>
export type SexesAndStagesResult = z.infer<typeof sexesAndStagesSchema>
