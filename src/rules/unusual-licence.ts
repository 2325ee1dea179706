import spdxIds from 'spdx-license-ids' with {type: 'json'}
import {nearestName} from '../model/nearest-name.ts'
import type {Rule} from './rule.ts'

/** The licences that the largest network for occurrence data accepts. */
const usual = ['CC0-1.0', 'CC-BY-4.0', 'CC-BY-NC-4.0']

export const unusualLicence = {
  code: 'unusual-licence',
  severity: 'caution',
  summary: 'the licence is not an SPDX identifier, or not one that data networks take',
  why: 'Machines cannot tell what others may do with the data; networks for occurrence data take CC0-1.0, CC-BY-4.0 and CC-BY-NC-4.0 only.',
  remedy: 'write `licence: CC-BY-4.0`, `CC0-1.0` or `CC-BY-NC-4.0` in study.yaml, as suits you',
  source:
    'SPDX licence list (spdx.org/licenses); the three licences: terms of the GBIF network (from memory)',
  examples: [
    {files: {'study.yaml': 'title: T\nlicence: CC-BY-4.0\n'}, findings: []},
    {
      files: {'study.yaml': 'title: T\nlicence: CC BY 4.0\n'},
      findings: ['study.yaml:2:10: `CC BY 4.0` is not an SPDX identifier of a licence']
    },
    {
      files: {'study.yaml': 'title: T\nlicence: MIT\n'},
      findings: ['study.yaml:2:10: `MIT` is a licence that data networks do not take']
    }
  ],
  *check({settings: {licence}, settingPlace}) {
    if (licence === undefined || usual.includes(licence)) return
    const place = settingPlace(['licence'])
    if (spdxIds.includes(licence)) {
      yield {
        place,
        message: `\`${licence}\` is a licence that data networks do not take`,
        severity: 'note',
        cell: licence
      }
      return
    }
    const meant = nearestName(licence, usual) ?? nearestName(licence, spdxIds)
    yield {
      place,
      message: `\`${licence}\` is not an SPDX identifier of a licence`,
      cell: licence,
      ...(meant !== undefined && {remedy: `did you mean \`${meant}\`?`})
    }
  }
} as const satisfies Rule
