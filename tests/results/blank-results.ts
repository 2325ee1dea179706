import type {Measure} from '../../src/model/quantity.ts'
import type {
  AssemblageResult,
  ComparisonResult,
  CurveResult,
  DissimilaritiesResult,
  MakeUpResult,
  PermutationsResult,
  PlanningResult,
  Results,
  ScopeResult
} from '../../src/model/results.ts'

/** Sections of results without any number, for hand-made results that are about something else. */
const none: Measure = {label: 'a number', kind: 'ratio', notDefined: 'nothing was counted'}
const noCurves: CurveResult[] = []
const noHill: AssemblageResult['hill'] = {
  q0: {observed: none, asymptotic: none},
  q1: {observed: none, asymptotic: none},
  q2: {observed: none, asymptotic: none}
}
const permutations: PermutationsResult = {distinct: none, tried: none, exhaustive: true, floor: none}
const unsupported = {supported: false, reasons: [], notes: []}

export const blankAssemblage: Pick<
  AssemblageResult,
  'ace' | 'incidence' | 'estimators' | 'profile' | 'coverageCurves'
> = {
  ace: none,
  incidence: {
    unit: 'site-round',
    units: none,
    incidences: none,
    species: none,
    uniques: none,
    duplicates: none,
    coverage: none,
    chao2: none,
    ice: none,
    jackknife1: none,
    jackknife2: none,
    hill: noHill,
    curves: noCurves,
    coverageCurves: noCurves
  },
  estimators: [],
  profile: {orders: [], observed: [], asymptotic: []},
  coverageCurves: noCurves
}

export const blankComparison: ComparisonResult = {
  ...unsupported,
  of: 'all names',
  unit: 'site',
  units: none,
  blocks: none,
  rounds: [],
  roundsLeftOut: [],
  habitats: [],
  leftOut: [],
  method: 'none',
  theta: none,
  coefficients: [],
  test: {statistic: none, degreesOfFreedom: none, p: none, permutations},
  ratios: [],
  residualDegreesOfFreedom: none,
  residuals: []
}

const dissimilarities: DissimilaritiesResult = {
  items: [],
  leftOut: [],
  sorensen: [],
  jaccard: [],
  brayCurtis: [],
  turnover: [],
  nestedness: [],
  meanWithin: none,
  meanBetween: none,
  multiple: {sorensen: none, turnover: none, nestedness: none},
  multipleWithin: []
}

const makeUp: MakeUpResult = {
  recorded: false,
  known: none,
  unknown: none,
  classes: [],
  study: [],
  habitats: []
}

const blankPlanning: PlanningResult = {
  of: 'all names',
  coverageTarget: none,
  halfWidthTarget: none,
  theta: none,
  habitats: [],
  detection: {ratio: none, level: none, power: none, simulations: none}
}

export const blankScope: Pick<
  ScopeResult,
  | 'equalCoverage'
  | 'partitions'
  | 'dissimilarities'
  | 'comparison'
  | 'composition'
  | 'indicators'
  | 'season'
  | 'guilds'
  | 'bodySizes'
  | 'planning'
> = {
  equalCoverage: {coverage: none, habitats: [], leftOut: [], sites: []},
  partitions: [],
  dissimilarities: {sites: dissimilarities, habitats: dissimilarities},
  comparison: blankComparison,
  composition: {
    ...unsupported,
    dissimilarity: 'Bray-Curtis',
    transformation: 'none',
    units: none,
    leftOut: [],
    permanova: {
      r2: none,
      f: none,
      groupDegreesOfFreedom: none,
      residualDegreesOfFreedom: none,
      p: none,
      permutations
    },
    dispersion: {
      f: none,
      groupDegreesOfFreedom: none,
      residualDegreesOfFreedom: none,
      p: none,
      permutations,
      habitats: [],
      negativeSquares: none,
      negativeSquareRule: 'none',
      cautions: []
    },
    principalCoordinates: {shares: [], imaginary: none, scores: []},
    nonMetricScaling: {stress: none, starts: none, startsAtBest: none, scores: []}
  },
  indicators: {
    ...unsupported,
    tested: none,
    permutations,
    adjustedFloor: none,
    withheld: false,
    species: []
  },
  season: [],
  guilds: makeUp,
  bodySizes: makeUp,
  planning: blankPlanning
}

export const blankSetAside: Results['sensitivity']['setAside'] = {
  rows: none,
  repeated: none,
  readable: none,
  individuals: none,
  withoutThem: none,
  withThem: none,
  shareSetAside: none,
  counted: none,
  effect: []
}

export const blankLayout: Results['sites'][number]['layout'] = {
  name: 'site',
  traps: [],
  notPlaced: none,
  whyNot: 'the place of each trap is not written down'
}

export const blankResults: Pick<
  Results,
  'replicates' | 'permutations' | 'methodsUsed' | 'comparison' | 'planning' | 'sexesAndStages' | 'map'
> = {
  map: {
    sites: [],
    rounded: none,
    tooRough: none,
    keptBack: none,
    notRecorded: none,
    whyNot: 'the positions of the sites are kept back'
  },
  replicates: 1000,
  permutations: 9999,
  methodsUsed: [],
  comparison: blankComparison,
  planning: blankPlanning,
  sexesAndStages: {sexes: [], stages: []}
}
