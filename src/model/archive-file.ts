import {z} from 'zod'

/**
 * data/archive.json: what made an archive, and whether its raw files are those of the study or a copy that holds
 * back positions and names. `verify` reads it.
 */
const digest = z
  .strictObject({
    path: z.string().describe('Path inside the study folder.'),
    bytes: z.number().int().min(0),
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
    sha512: z.string().regex(/^[0-9a-f]{128}$/)
  })
  .readonly()
  .meta({id: 'digest'})

export const archiveFileSchema = z.strictObject({
  format: z.literal('pitfolio-archive'),
  formatVersion: z.literal(1),
  tool: z.strictObject({name: z.literal('pitfolio'), version: z.string()}).describe('What made the archive.'),
  raw: z
    .enum(['exact', 'generalised'])
    .describe('exact: the files of the study, byte for byte; generalised: a copy that holds something back.'),
  originals: z
    .array(digest)
    .readonly()
    .describe('The files of the study as they were; where raw is exact, they are the same as those in raw/.'),
  heldBack: z.array(z.string()).readonly().describe('What is private in this study, in sentences.'),
  leftOut: z
    .array(z.strictObject({path: z.string(), reason: z.string()}).readonly())
    .readonly()
    .describe('Files of the study that are not in the archive.'),
  notRecomputable: z
    .array(z.string())
    .readonly()
    .describe('Places in report/results.json whose values hang on what is held back; keys part the path.')
})

export type ArchiveFile = z.infer<typeof archiveFileSchema>

export const archiveFileName = 'archive.json'
