import {rulesPage} from './rules-page.ts'
import {schemaFiles} from './schema-files.ts'

/** Every file that is made from code, by its path in the repository. */
export function generatedFiles(): ReadonlyMap<string, string> {
  return new Map([...schemaFiles(), ['templates/docs/rules.md', rulesPage()]])
}
