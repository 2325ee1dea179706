import {once} from 'node:events'
import {createWriteStream} from 'node:fs'
import {mkdir, writeFile} from 'node:fs/promises'
import {join} from 'node:path'
import {isoDay} from '../../src/model/day.ts'

const traps = 200
const sites = 20
const taxa = 50

/** A sound study with so many catch rows, invented by rule and not by chance. */
export async function writeBigStudy(folder: string, catchRows: number): Promise<void> {
  await mkdir(folder, {recursive: true})
  const rounds = Math.ceil(catchRows / traps / taxa)
  const lines = (count: number, line: (index: number) => string): string =>
    Array.from({length: count}, (_, index) => `${line(index)}\n`).join('')
  const firstDay = 12_000
  const opened = (round: number): string => isoDay(firstDay + round * 7)
  await writeFile(
    join(folder, 'study.yaml'),
    'title: A long series\nhabitats: {wood: Wood, meadow: Meadow}\n'
  )
  await writeFile(
    join(folder, 'sites.csv'),
    `site_id,habitat\n${lines(sites, (site) => `S${site},${site % 2 === 0 ? 'wood' : 'meadow'}`)}`
  )
  await writeFile(
    join(folder, 'traps.csv'),
    `trap_id,site_id\n${lines(traps, (trap) => `T${trap},S${trap % sites}`)}`
  )
  await writeFile(
    join(folder, 'taxa.csv'),
    `taxon,rank,family\n${lines(taxa, (taxon) => `Genus species${taxon},species,Carabidae`)}`
  )
  const visits = createWriteStream(join(folder, 'visits.csv'))
  const records = createWriteStream(join(folder, 'catch.csv'))
  visits.write('trap_id,opened,collected,sample\n')
  records.write('trap_id,collected,taxon,count,sex,life_stage,identified_by\n')
  let written = 0
  for (let round = 0; round < rounds; round++) {
    for (let trap = 0; trap < traps && written < catchRows; trap++) {
      visits.write(`T${trap},${opened(round)},${opened(round + 1)},sorted\n`)
      let text = ''
      for (let taxon = 0; taxon < taxa && written < catchRows; taxon++, written++) {
        text += `T${trap},${opened(round + 1)},Genus species${taxon},${1 + ((taxon * (trap + 1)) % 7)},female,adult,A. Nobody\n`
      }
      if (!records.write(text)) await once(records, 'drain')
    }
  }
  visits.end()
  records.end()
  await Promise.all([once(visits, 'close'), once(records, 'close')])
}
