import type {Rule} from './rule.ts'

export const habitatStructureNotRecorded = {
  code: 'habitat-structure-not-recorded',
  severity: 'note',
  summary: 'nothing is recorded of the vegetation and litter round the traps',
  why: 'Dense ground slows animals down, so that a trap in an open place catches more of the same population; without a record nobody can judge how much.',
  remedy:
    'fill `vegetation_height_cm`, `litter_depth_mm`, `bare_ground_percent` or `canopy_percent` in sites.csv',
  source: 'Melbourne 1999: habitat structure should be recorded routinely',
  examples: [
    {files: {}, findings: []},
    {
      files: {'sites.csv': 'site_id,habitat\nW1,wood\nM1,wood\n'},
      findings: ['sites.csv: no site has a height of vegetation, depth of litter, bare ground or canopy']
    }
  ],
  *check({tables}, index) {
    const {sites} = index.fieldwork
    const isRecorded = sites.some(
      ({vegetationHeightCm, litterDepthMm, bareGroundPercent, canopyPercent}) =>
        (vegetationHeightCm ?? litterDepthMm ?? bareGroundPercent ?? canopyPercent) !== undefined
    )
    if (sites.length === 0 || isRecorded) return
    yield {
      place: {file: tables.sites?.file ?? 'sites.csv'},
      message: 'no site has a height of vegetation, depth of litter, bare ground or canopy'
    }
  }
} as const satisfies Rule
