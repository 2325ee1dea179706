/**
 * Writes the example study and its clean twin. ALL DATA ARE INVENTED: place, people, weather, catches. The
 * species names are real; their authorities and lengths are from memory.
 *
 *   npx tsx tests/example-season/make-example.ts            writes example-study/ and blemishes.md
 *   npx tsx tests/example-season/make-example.ts FOLDER     writes the clean twin into FOLDER
 *
 * The draws are seeded (stream.ts), so the same script writes the same bytes on every machine.
 *
 * Blemishes, in the example only (each with its line in blemishes.md):
 * - slips of the keyboard in catch.csv: a misspelt name (Pterostichus melanraius), a trap that does not exist
 *   (OAK2-33), a row typed twice, a count of 12*;
 * - round R4, storm: six traps overflowed (one of them with nothing left), four diluted;
 * - round R7, hot spell: three traps dry;
 * - badgers: three traps dug up, one of them on a known day; a trap trodden in by deer; a rim left proud by rain;
 * - two traps missing, one vial lost at the bench, one sample not sorted yet, one shrew;
 * - names that stop short of a kind: Amara sp., one cf., larvae, juvenile spiders by family; an older name.
 */
import {mkdirSync, writeFileSync} from 'node:fs'
import {dirname, join} from 'node:path'
import {fileURLToPath} from 'node:url'
import {blemishesPage} from './blemishes-page.ts'
import {cleanTwin, exampleStudy, type StudyFiles} from './example-study.ts'

export {blemishesPage, cleanTwin, exampleStudy}

const here = dirname(fileURLToPath(import.meta.url))

/** Writes the clean twin into a folder, which is made where it is missing. */
export function writeCleanTwin(folder: string): void {
  writeFiles(folder, cleanTwin())
}

function writeFiles(folder: string, files: StudyFiles): void {
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), {recursive: true})
    writeFileSync(join(folder, path), text)
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = process.argv[2]
  if (folder) {
    writeCleanTwin(folder)
  } else {
    writeFiles(join(here, '../../example-study'), exampleStudy())
    writeFileSync(join(here, 'blemishes.md'), blemishesPage())
  }
}
