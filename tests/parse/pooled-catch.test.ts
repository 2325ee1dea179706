import {expect, test} from 'vitest'
import {checkStudy} from '../../src/check-study.ts'
import {baseStudy} from '../../src/rules/base-study.ts'
import {memorySource} from '../memory-source.ts'

const visits = (baseStudy['visits.csv'] ?? '').split('\n')

/** The base study with rounds, and a catch that names sites and rounds only. */
const pooled = {
  ...baseStudy,
  'visits.csv': visits
    .map((line, index) => (line === '' ? line : `${line},${index === 0 ? 'round' : 'R1'}`))
    .join('\n')
}

test.each([
  [
    'long',
    'site_id,round,taxon,count,pooled_traps\nW1,R1,Carabus problematicus,3,5\nW1,R1,Abax parallelepipedus,2,5\n'
  ],
  ['wide', 'site_id,round,Carabus problematicus,Abax parallelepipedus\nW1,R1,3,2\n']
])('a catch pooled in the field needs no columns for trap and day: %s', async (_shape, table) => {
  const usable = await checkStudy(memorySource({...pooled, 'catch.csv': table}))
  if ('unreadable' in usable) throw new Error(JSON.stringify(usable.unreadable))
  expect(usable.study.catch.map(({siteId, round, taxon, count}) => [siteId, round, taxon, count])).toEqual([
    ['W1', 'R1', 'Carabus problematicus', 3],
    ['W1', 'R1', 'Abax parallelepipedus', 2]
  ])
})
