import {z} from 'zod'
import {archiveFileSchema} from '../../src/model/archive-file.ts'
import {findingsFileSchema} from '../../src/model/findings-file.ts'
import {provenanceSchema} from '../../src/model/provenance.ts'
import {resultsSchema} from '../../src/model/results.ts'
import {settingsSchema} from '../../src/model/settings.ts'

interface Described {
  readonly path: string
  readonly title: string
  readonly description: string
  readonly schema: z.ZodType
}

const described: readonly Described[] = [
  {
    path: 'src/model/study.schema.json',
    title: 'study.yaml of pitfolio',
    description: 'What is said about a pitfall-trap study beside its tables: who, where, why and how.',
    schema: settingsSchema
  },
  {
    path: 'src/model/results.schema.json',
    title: 'results.json of pitfolio',
    description:
      'Every computed number of a report, with label, unit and interval, or the reason why there is none.',
    schema: resultsSchema
  },
  {
    path: 'src/model/findings.schema.json',
    title: 'findings.json of pitfolio',
    description: 'Everything that was found in a study folder, and what became of every row.',
    schema: findingsFileSchema
  },
  {
    path: 'src/model/provenance.schema.json',
    title: 'provenance.json of pitfolio',
    description: 'Which files a report was made from, with which choices, and every file of the report.',
    schema: provenanceSchema
  },
  {
    path: 'src/model/archive.schema.json',
    title: 'archive.json of pitfolio',
    description:
      'What made an archive, and whether its raw files are those of the study or a copy that holds something back.',
    schema: archiveFileSchema
  }
]

/** The JSON Schemas in src/model, by path, from the descriptions that the code itself reads by. */
export function schemaFiles(): ReadonlyMap<string, string> {
  return new Map(described.map((one) => [one.path, schemaText(one)]))
}

function schemaText({title, description, schema}: Described): string {
  const {$schema, ...body} = z.toJSONSchema(schema, {
    target: 'draft-2020-12',
    io: 'input',
    override: ({jsonSchema}) => tidy(jsonSchema)
  })
  return `${JSON.stringify({$schema, title, description, ...body}, null, 2)}\n`
}

/** Leave out what says nothing to a person or an editor: bounds of JavaScript's own, and that a list is read only. */
function tidy(schema: z.core.JSONSchema.BaseSchema): void {
  if (schema.minimum === Number.MIN_SAFE_INTEGER) delete schema.minimum
  if (schema.maximum === Number.MAX_SAFE_INTEGER) delete schema.maximum
  delete schema.readOnly
  // $defs names its parts already.
  delete schema.id
}
