import type {Rule} from './rule.ts'

/** Diameters that were tested lie between 43 and 200 mm; the limits within are ours. */
const smallestMm = 40
const largestMm = 120

export const unusualRimDiameter = {
  code: 'unusual-rim-diameter',
  severity: 'caution',
  summary: 'the mouth of a trap is unusually narrow or wide',
  why: 'The width of the mouth decides what is caught, and dividing by its circumference does not make catches of different widths equal.',
  remedy:
    'check that the number is the inner diameter in millimetres; if it is right, name the bias in `limitations`',
  source:
    'diameters of 43 to 200 mm compared: Work et al. 2002, Brennan et al. 2005; vertebrates: Lange et al. 2011; the limits, 40 and 120 mm, are proposals of ours',
  examples: [
    {files: {}, findings: []},
    {
      files: {'study.yaml': 'title: T\ntrap_types: {cup: {rim_diameter_mm: 22}}\n'},
      findings: [
        'study.yaml:2:37: the mouth of `cup` is 22 mm wide: below 40 mm large-bodied arthropods are under-sampled'
      ]
    },
    {
      files: {'study.yaml': 'title: T\ntrap_types: {bucket: {rim_diameter_mm: 200}}\n'},
      findings: [
        'study.yaml:2:40: the mouth of `bucket` is 200 mm wide: above 120 mm it takes vertebrates too'
      ]
    }
  ],
  *check({settingPlace}, index) {
    for (const [id, {rim_diameter_mm: diameter}] of index.fieldwork.trapTypes) {
      if (diameter === undefined || (diameter >= smallestMm && diameter <= largestMm)) continue
      const bias =
        diameter < smallestMm
          ? `below ${smallestMm} mm large-bodied arthropods are under-sampled`
          : `above ${largestMm} mm it takes vertebrates too`
      yield {
        place: settingPlace(['trap_types', id, 'rim_diameter_mm']),
        message: `the mouth of \`${id}\` is ${diameter} mm wide: ${bias}`
      }
    }
  }
} as const satisfies Rule
