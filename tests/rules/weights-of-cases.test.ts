import {expect, test} from 'vitest'
import {parseStudy} from '../../src/parse/parse-study.ts'
import {baseStudy} from '../../src/rules/base-study.ts'
import type {RuleCode} from '../../src/rules/index.ts'
import {judgeStudy} from '../../src/rules/judge-study.ts'
import {memorySource} from '../memory-source.ts'

type Case = readonly [code: RuleCode, severity: string | undefined, files: Readonly<Record<string, string>>]

const settings = (lines: string) => ({'study.yaml': `title: T\n${lines}\n`})
const sites = (rows: string) => ({'sites.csv': `site_id,habitat,litter_depth_mm\n${rows}`})
const catches = (rows: string, columns = '') => ({
  'catch.csv': `trap_id,collected,taxon,count${columns}\n${rows}`
})

/** Cases of one rule that weigh differently, and cases near the line that must not be found at all. */
const cases: readonly Case[] = [
  ['traps-close-together', 'caution', settings('layout: {spacing_m: 0.5}')],
  ['traps-close-together', 'note', settings('layout: {spacing_m: 29}')],
  ['few-sites-in-a-habitat', 'caution', sites('W1,wood,1\nM1,meadow,1\n')],
  ['few-sites-in-a-habitat', 'note', sites('W1,wood,1\nW2,wood,1\nM1,meadow,1\nM2,meadow,1\n')],
  ['few-sites-in-a-habitat', undefined, sites('W1,wood,1\n')],
  ['unusual-licence', 'note', settings('licence: GPL-3.0-only')],
  ['unusual-licence', undefined, settings('licence: CC-BY-NC-4.0')],
  ['invalid-orcid', undefined, settings('people: [{name: A, orcid: https://orcid.org/0000-0002-1694-233X}]')],
  ['short-settling', 'caution', {'traps.csv': 'trap_id,site_id,installed\nW1-1,W1,2026-05-04\n'}],
  ['short-settling', 'note', {'traps.csv': 'trap_id,site_id,installed\nW1-1,W1,2026-05-02\n'}],
  ['short-settling', 'note', {'traps.csv': 'trap_id,site_id\nW1-1,W1\n'}],
  [
    'short-settling',
    undefined,
    {...settings('protocol: {settling_nights: 8}'), 'traps.csv': 'trap_id,site_id\nW1-1,W1\n'}
  ],
  ['interval-too-long-for-fluid', 'caution', settings('fluids: {w: {substance: water}}')],
  ['interval-too-long-for-fluid', undefined, settings('fluids: {v: {substance: vinegar}}')],
  ['unusual-dilution', undefined, settings('fluids: {f: {substance: formalin, dilution: "4 %"}}')],
  ['unusual-dilution', undefined, settings('fluids: {p: {substance: propylene glycol, dilution: "33 %"}}')],
  ['unusual-dilution', undefined, settings('fluids: {p: {substance: propylene glycol, dilution: "3:1"}}')],
  ['vertebrate-in-catch', undefined, catches('W1-1,2026-05-18,common froghopper,2\n')],
  [
    'vertebrate-in-catch',
    undefined,
    {...settings('target: {groups: [Amphibia]}'), ...catches('W1-1,2026-05-18,Amphibia,2\n')}
  ],
  [
    'impossible-sex-or-stage',
    undefined,
    catches('W1-1,2026-05-18,Carabus problematicus,2,,pupa\n', ',sex,life_stage')
  ],
  [
    'gap-between-visits',
    undefined,
    {
      // Closed between rounds by design: nobody stood open in the week between.
      'visits.csv': `trap_id,opened,collected,sample\n${['W1-1', 'W1-2', 'W1-3']
        .map((trap) => `${trap},2026-05-04,2026-05-11,empty\n${trap},2026-05-18,2026-05-25,empty\n`)
        .join('')}`
    }
  ],
  [
    'taxon-spelled-two-ways',
    undefined,
    {
      ...catches('W1-1,2026-05-18,Staphylinidae,2\nW1-1,2026-05-18,Staphylininae,2\n'),
      'taxa.csv': 'taxon\n'
    }
  ],
  [
    'taxon-spelled-two-ways',
    undefined,
    {
      ...catches('W1-1,2026-05-18,Aleochara lata,2\nW1-1,2026-05-18,Aleochara laeta,2\n'),
      'taxa.csv': 'taxon\n'
    }
  ],
  [
    'taxon-spelled-two-ways',
    'caution',
    {
      ...catches('W1-1,2026-05-18,Pterostichus niger,2\nW1-1,2026-05-18,Pterosticus niger,2\n'),
      'taxa.csv': 'taxon\n'
    }
  ]
]

test.each(cases)('%s weighs as %s (case %#)', async (code, severity, files) => {
  const outcome = await parseStudy(memorySource({...baseStudy, ...files}))
  if ('unreadable' in outcome) throw new Error(JSON.stringify(outcome.unreadable))
  const found = judgeStudy(outcome.study).findings.filter((finding) => finding.code === code)
  expect(found.map((finding) => finding.severity)).toEqual(severity === undefined ? [] : [severity])
})
