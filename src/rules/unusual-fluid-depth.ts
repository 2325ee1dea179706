import type {Rule} from './rule.ts'

const shallowestMm = 15
const deepestMm = 80

export const unusualFluidDepth = {
  code: 'unusual-fluid-depth',
  severity: 'note',
  summary: 'the fluid stands unusually low or high in the trap',
  why: 'A shallow layer dries out or lets animals climb on each other; a deep one leaves little room for rain and for what falls in.',
  remedy: 'check that `depth_mm` is the depth of the fluid and in millimetres',
  source:
    '25 to 50 mm, or a quarter to three quarters of the cup: protocols of Jornada LTER, North Temperate Lakes LTER and others; the limits, 15 and 80 mm, are proposals of ours',
  examples: [
    {
      files: {'study.yaml': 'title: T\nfluids: {pg: {substance: propylene glycol, depth_mm: 30}}\n'},
      findings: []
    },
    {
      files: {'study.yaml': 'title: T\nfluids: {pg: {substance: propylene glycol, depth_mm: 3}}\n'},
      findings: ['study.yaml:2:54: `pg` stands 3 mm deep; usual is 15 to 80 mm']
    }
  ],
  *check({settingPlace}, index) {
    for (const [id, {depth_mm: depth}] of index.fieldwork.fluids) {
      if (depth === undefined || (depth >= shallowestMm && depth <= deepestMm)) continue
      yield {
        place: settingPlace(['fluids', id, 'depth_mm']),
        message: `\`${id}\` stands ${depth} mm deep; usual is ${shallowestMm} to ${deepestMm} mm`
      }
    }
  }
} as const satisfies Rule
