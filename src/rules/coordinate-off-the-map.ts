import {problemsOf} from './problems-of.ts'
import type {Rule} from './rule.ts'

export const coordinateOffTheMap = {
  code: 'coordinate-off-the-map',
  severity: 'caution',
  summary: 'a latitude or longitude is not on the earth',
  why: 'The position is left out, so distances and maps lack this place.',
  remedy: 'check the digits, and whether latitude and longitude changed places',
  source: "the study folder's own logic",
  examples: [
    {files: {}, findings: []},
    {
      files: {'sites.csv': 'site_id,habitat,latitude,longitude\nW1,wood,151.20,9.10\nM1,meadow,51.21,9.12\n'},
      findings: ['sites.csv:2:9: this is not a latitude: -90 to 90 degrees is possible']
    }
  ],
  check: (study) => problemsOf(study, 'coordinate-off-the-map')
} as const satisfies Rule
