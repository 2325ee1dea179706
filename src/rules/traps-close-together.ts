import type {Rule} from './rule.ts'

export const trapsCloseTogether = {
  code: 'traps-close-together',
  severity: 'note',
  summary: 'traps of a site stand so close that they share their ground',
  why: 'Near traps catch from each other: they are subsamples of their site and never sampling units, and at one metre they find fewer species of beetles.',
  remedy: 'leave `analysis.unit` at site; next time set traps further apart, if the question allows',
  source:
    'richness lower at 1 m than at 5 and 10 m: Ward et al. 2001; fewer carabids at 10 m: Digweed et al. 1995; independence at about 30 m: Bergeron (conference abstract); usual practice of 2 m: Ribera et al. 2001',
  examples: [
    {files: {'study.yaml': 'title: T\nlayout: {spacing_m: 30}\n'}, findings: []},
    {
      files: {'study.yaml': 'title: T\nlayout: {spacing_m: 1}\n'},
      findings: [
        'study.yaml:2:21: traps stand 1 m apart: at 1 m or less fewer species of beetles were found than at 5 m'
      ]
    },
    {
      files: {'study.yaml': 'title: T\nlayout: {spacing_m: 2}\n'},
      findings: ['study.yaml:2:21: traps stand 2 m apart: under 5 m they share one catchment']
    },
    {
      files: {'study.yaml': 'title: T\nlayout: {spacing_m: 10}\n'},
      findings: [
        'study.yaml:2:21: traps stand 10 m apart: under 30 m they are subsamples, and depletion is possible'
      ]
    }
  ],
  *check({settings: {layout}, settingPlace}) {
    const spacing = layout?.spacing_m
    if (spacing === undefined || spacing >= 30) return
    const place = settingPlace(['layout', 'spacing_m'])
    const said = `traps stand ${spacing} m apart`
    if (spacing <= 1) {
      const message = `${said}: at 1 m or less fewer species of beetles were found than at 5 m`
      yield {place, message, severity: 'caution'}
    } else if (spacing < 5) {
      yield {place, message: `${said}: under 5 m they share one catchment`}
    } else {
      yield {place, message: `${said}: under 30 m they are subsamples, and depletion is possible`}
    }
  }
} as const satisfies Rule
