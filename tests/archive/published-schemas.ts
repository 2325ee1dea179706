import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {Ajv, type ValidateFunction} from 'ajv'
import {sharedFolder} from '../needs.ts'

/** A published schema, read where it lies beside the project; never part of it. */
export function publishedSchema(name: string): string {
  return join(sharedFolder('schemas'), name)
}

/** A validator of a published JSON Schema, with the formats that those in use here name. */
export function jsonValidator(name: string): ValidateFunction {
  const ajv = new Ajv({strict: false, allErrors: true})
  ajv.addFormat('uri', /^[a-z][a-z0-9+.-]*:\S+$/i)
  ajv.addFormat('email', /^\S+@\S+\.\S+$/)
  ajv.addFormat('date', /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/)
  ajv.addFormat('date-time', /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/)
  ajv.addFormat('textarea', true)
  return ajv.compile(JSON.parse(readFileSync(publishedSchema(name), 'utf8')) as object)
}
