import {readFileSync} from 'node:fs'
import {join} from 'node:path'
import {describe, expect} from 'vitest'
import {checkStudy} from '../src/check-study.ts'
import type {Results} from '../src/model/results.ts'
import {computeResults} from '../src/results/index.ts'
import {memorySource} from './memory-source.ts'
import {sharedFolder, testWith} from './needs.ts'
import {about, maps} from './real-season-settings.ts'

/**
 * Ground beetles of one observatory site in 2014, which nobody here made: the same season in the project's tables
 * and as it came. Expected totals: the season's own description, and counts made by hand from its files.
 */
const folder = sharedFolder('data/real-season')
const read = (...names: string[]): Record<string, Uint8Array> =>
  Object.fromEntries(names.map((name) => [name.split('/').at(-1) ?? name, readFileSync(join(folder, name))]))

async function results(files: Record<string, string | Uint8Array>): Promise<Results> {
  const usable = await checkStudy(memorySource(files))
  if ('unreadable' in usable) throw new Error(JSON.stringify(usable.unreadable))
  expect(usable.findings.filter(({severity}) => severity === 'error')).toEqual([])
  return computeResults(usable)
}

const canonical = () =>
  results({'study.yaml': about, ...read('sites.csv', 'traps.csv', 'visits.csv', 'catch.csv', 'taxa.csv')})
const asItCame = () => results({'study.yaml': about + maps, ...read('raw/field.csv', 'raw/catch.csv')})
const value = (measure: unknown): number => (measure as {value: number}).value

describe('a real season', () => {
  testWith('the real season')('gives the effort and the catch that its files hold', async () => {
    const {habitats, records, design, catch: total} = await canonical()
    expect(records.tables.map(({table, used}) => [table, value(used)])).toEqual([
      ['sites', 10],
      ['traps', 40],
      ['visits', 322],
      ['catch', 544],
      ['taxa', 49]
    ])
    expect([value(design.sites), value(design.traps)]).toEqual([10, 40])
    expect([value(total.total), value(total.individuals), value(total.outsideEffort)]).toEqual([
      1593, 1584, 9
    ])
    const byHabitat = habitats.map(({id, effort, catch: caught}) => ({
      id,
      recorded: value(caught.total),
      inRates: value(caught.individuals),
      names: value(caught.names),
      exposed: value(effort.exposed),
      net: value(effort.net),
      rate: Number(value(caught.rate).toFixed(3))
    }))
    expect(byHabitat).toEqual([
      {
        id: 'deciduousForest',
        recorded: 1474,
        inRates: 1466,
        names: 36,
        exposed: 3127,
        net: 2784.5,
        rate: 52.649
      },
      {id: 'pastureHay', recorded: 119, inRates: 118, names: 24, exposed: 1333, net: 1278, rate: 9.233}
    ])
  })

  testWith('the real season')(
    'gives the same effort, catch and diversity from the files as they came',
    async () => {
      const [tidy, raw] = [await canonical(), await asItCame()]
      const compared = ({effort, catch: caught, habitats, traps, scopes, sensitivity}: Results) => ({
        effort,
        caught,
        habitats,
        traps,
        sensitivity,
        scopes: scopes.map(({study, habitats: assemblages, sites, leftOut, equalCoverage, partitions}) => ({
          study,
          assemblages,
          sites,
          leftOut,
          equalCoverage,
          partitions
        }))
      })
      expect(compared(raw)).toEqual(compared(tidy))
    }
  )
})
