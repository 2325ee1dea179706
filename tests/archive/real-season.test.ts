import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {expect} from 'vitest'
import {temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {sharedFolder, testWith} from '../needs.ts'
import {about, maps} from '../real-season-settings.ts'
import {archivedFiles, textOf} from './archive-on-disk.ts'
import {checkBag} from './check-bag.ts'
import {checkDarwinCore, rowsOf} from './check-darwin-core.ts'
import {checkDataPackage, type Resource} from './check-data-package.ts'
import {verified} from './small-report.ts'

/** A season that nobody here made, in the files in which it came: one file serves several tables. */
const settings = about + maps

testWith('the real season')(
  'a real season as it came makes an archive that fits itself, gives nothing away and verifies',
  async () => {
    const raw = (name: string) => readFileSync(join(sharedFolder('data/real-season'), 'raw', name))
    const {files, zip} = await archivedFiles({
      'study.yaml': settings,
      'field.csv': raw('field.csv'),
      'catch.csv': raw('catch.csv')
    })
    expect(checkBag(files)).toEqual([])
    expect(checkDarwinCore(files)).toEqual([])
    const {resources} = JSON.parse(textOf(files, 'data/datapackage.json')) as {resources: Resource[]}
    const payload = new Map(
      [...files].flatMap(([path, bytes]) =>
        path.startsWith('data/') ? [[path.slice(5), bytes] as const] : []
      )
    )
    expect(checkDataPackage(resources, payload)).toEqual([])
    const sum = rowsOf(files, 'data/dwca/occurrence.csv').reduce(
      (total, row) => total + Number(row.individualCount),
      0
    )
    expect(sum).toBe(1593)
    expect(rowsOf(files, 'data/dwca/event.csv').filter((row) => row.eventType === 'trapVisit')).toHaveLength(
      322
    )
    // Positions to 0.01 degrees, unless more was allowed.
    const [latitude, longitude] = ['38.895217', '-78.142694']
    for (const [path, bytes] of files)
      expect(Buffer.from(bytes).includes(latitude) || Buffer.from(bytes).includes(longitude), path).toBe(
        false
      )
    const {raw: kind, notRecomputable} = JSON.parse(textOf(files, 'data/archive.json')) as {
      raw: string
      notRecomputable: string[]
    }
    expect(kind).toBe('generalised')
    expect(
      notRecomputable.filter((pointer) => /^\/(effort|catch|habitats|rounds|traps|taxa)/.test(pointer))
    ).toEqual([])
    const folder = temporaryFolder()
    writeFiles(folder, {'a.zip': zip})
    expect((await verified(join(folder, 'a.zip'))).code).toBe(0)
  }
)
