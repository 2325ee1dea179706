import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {expect} from 'vitest'
import {temporaryFolder, writeFiles} from '../files/study-on-disk.ts'
import {sharedFolder, testWith} from '../needs.ts'
import {archivedFiles, textOf} from './archive-on-disk.ts'
import {checkBag} from './check-bag.ts'
import {checkDarwinCore, rowsOf} from './check-darwin-core.ts'
import {checkDataPackage, type Resource} from './check-data-package.ts'
import {verified} from './small-report.ts'

/** A season that nobody here made, in the files in which it came: one file serves several tables. */
const settings = `title: Ground beetles at one observatory site
season: {start: 2014-05-01, end: 2014-10-31}
habitats: {deciduousForest: deciduous forest, pastureHay: pasture and hay}
trap_types: {deli-cup: {container: deli cup, rim_diameter_mm: 110, cover: raised cover}}
fluids: {propylene-glycol: {substance: propylene glycol, dilution: '1:1', volume_ml: 250}}
target: {groups: [Carabidae], life_stages: [adult], all_recorded: true}
analysis: {replicates: 10, permutations: 99, scopes: {carabidae: {label: 'ground beetles, adults', family: Carabidae}}}
dates: mdy
no_catch_rows: empty
files: {sites: field.csv, traps: field.csv, visits: field.csv, catch: catch.csv, taxa: catch.csv}
columns:
  sites: {site_id: plotID, habitat: nlcdClass, latitude: decimalLatitude, longitude: decimalLongitude, elevation_m: elevation}
  traps: {trap_id: {join: [plotID, trapID]}, site_id: plotID, trap_type: {value: deli-cup}, fluid: {value: propylene-glycol}}
  visits: {trap_id: {join: [plotID, trapID]}, opened: setDate, collected: collectDate, condition: cupStatus, round: boutNumber}
  catch: {trap_id: {join: [plotID, trapID]}, collected: collectDate, taxon: {first_of: [scientificName, morphospeciesID]}, count: individualCount, qualifier: identificationQualifier}
  taxa: {taxon: {first_of: [scientificName, morphospeciesID]}, rank: taxonRank, authority: scientificNameAuthorship, family: {value: Carabidae}}
words: {condition: {ok: intact}, taxon: {'': Carabidae}}
`

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
