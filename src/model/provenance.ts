import {z} from 'zod'

/**
 * provenance.json: which files a report was made from, with which choices, and every file of the report. No clock,
 * no machine, no absolute path, so that the same study gives the same bytes anywhere.
 */
const fileHash = z
  .strictObject({
    path: z.string().describe('Path inside the study folder, or inside the report.'),
    bytes: z.number().int().min(0),
    sha256: z.string().regex(/^[0-9a-f]{64}$/)
  })
  .readonly()
  .meta({id: 'fileHash'})

export const provenanceSchema = z.strictObject({
  format: z.literal('pitfolio-provenance'),
  formatVersion: z.literal(1),
  tool: z.strictObject({name: z.literal('pitfolio'), version: z.string()}).describe('What made the report.'),
  options: z
    .strictObject({
      only: z
        .array(z.string())
        .readonly()
        .optional()
        .describe('The documents that were asked for; all where absent.'),
      pdf: z
        .literal(true)
        .optional()
        .describe('There where pages were printed to PDF: those files alone differ from build to build.')
    })
    .describe('Choices of the command line that change what the report holds.'),
  seed: z.number().int().describe('Seed of every random stream.'),
  inputs: z.array(fileHash).readonly().describe('Every file of the study that was read, by path.'),
  outputs: z.array(fileHash).readonly().describe('Every other file of the report, by path.')
})

export type FileHash = z.infer<typeof fileHash>
export type Provenance = z.infer<typeof provenanceSchema>
