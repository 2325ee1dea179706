import {z} from 'zod'
import type {Measure} from './quantity.ts'

/** results.json's form of a Measure; `satisfies` below keeps it and the type from drifting apart. */
const interval = z.strictObject({
  low: z.number(),
  high: z.number(),
  confidence: z.number(),
  method: z.string().describe('What kind of interval this is.')
})

const common = {
  label: z.string().describe('What the number is, in words.'),
  kind: z
    .enum([
      'count',
      'nights',
      'rate',
      'diversity',
      'estimate',
      'share',
      'coverage',
      'probability',
      'ratio',
      'metres',
      'kilometres',
      'number'
    ])
    .describe('Decides rounding and unit words.'),
  unit: z
    .tuple([z.string(), z.string()])
    .readonly()
    .optional()
    .describe('Singular and plural of what is counted.')
}

const definedMeasure = z.strictObject({
  ...common,
  value: z.number(),
  standardError: z.number().optional(),
  interval: interval.optional(),
  caution: z.string().optional().describe('Must stand beside the number wherever it is shown.')
})

const undefinedMeasure = z.strictObject({
  ...common,
  notDefined: z.string().describe('Completes the sentence: not defined, because ...')
})

/** A number with label, kind and unit, or the reason why there is none. */
export const measureSchema = z
  .union([definedMeasure, undefinedMeasure])
  .meta({id: 'measure'}) as unknown as z.ZodType<Measure>
