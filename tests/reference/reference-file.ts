import {readFileSync} from 'node:fs'

/** A number, or null where the second implementation says 'not defined'. */
export type Figure = number | null

export interface RichnessBound {
  readonly estimate: number
  readonly variance: number
  readonly se: number
  readonly lower: number
  readonly upper: number
}

/** A size and what is expected of it: coverage and diversity of orders 0, 1, 2. */
export type CurveRow = readonly [size: number, coverage: Figure, q0: number, q1: number, q2: Figure]

interface Named {
  readonly id: string
}

/** Variance and limits of an estimate that stands beside them. */
export interface IntervalFigures {
  readonly variance: number
  readonly lower: number
  readonly upper: number
}

export interface ShareFigures {
  readonly share: Figure
  readonly se: Figure
  readonly lower: Figure
  readonly upper: Figure
  readonly interval: 'ratio' | 'exact' | null
}

interface DiversityFigures extends Named {
  readonly s: number
  readonly hill: Readonly<Record<string, number>> | null
  readonly coverage: Figure
  readonly asymptoticShannon: Figure
  readonly asymptoticQ1: Figure
  readonly asymptoticQ2: Figure
  readonly curve: readonly CurveRow[]
}

export interface AbundanceFigures extends DiversityFigures {
  readonly n: number
  readonly f1: number
  readonly f2: number
  readonly shannon: Figure
  readonly giniSimpson: Figure
  readonly giniSimpsonUnbiased: Figure
  readonly pielou: Figure
  readonly bergerParker: Figure
  readonly chao1: RichnessBound | null
  readonly ace: Figure
  readonly aceInterval: IntervalFigures | null
  readonly asymptoticCross?: boolean
  readonly sizeForCoverage: readonly (readonly [target: number, size: Figure])[]
}

export interface IncidenceFigures extends DiversityFigures {
  readonly units: number
  readonly frequencies: readonly number[]
  readonly incidences: number
  readonly uniques: number
  readonly duplicates: number
  readonly chao2: RichnessBound | null
  readonly ice: Figure
  readonly iceInterval: IntervalFigures | null
  readonly jackknife1: Figure
  readonly jackknife1Interval: IntervalFigures | null
  readonly jackknife2: Figure
  readonly jackknife2Interval: IntervalFigures | null
}

type Three = readonly [number, number, number]

export interface ModelFigures {
  readonly coefficients: readonly number[]
  readonly se: readonly number[]
  readonly logLik: number
}

export interface PermanovaFigures {
  readonly ssTotal: number
  readonly ssWithin: number
  readonly df: readonly [number, number]
  readonly f: number
  readonly r2: number
  readonly p: Figure
}

export interface PartitionFigures {
  readonly alpha: Three
  readonly beta: Three
  readonly gamma: Three
}

export interface RateFigures {
  readonly rate: number
  readonly s: Figure
  readonly lower: number
  readonly upper: number
  readonly interval: 'ratio' | 'garwood'
}

export interface DesignFigures extends Named {
  readonly catch: readonly number[]
  readonly assignments: number
  readonly floor: number
  readonly rates: readonly RateFigures[]
  readonly kruskalWallis: {readonly h: number; readonly df: number; readonly pChiSquare: number} | null
  readonly kruskalWallisP: Figure
  readonly poisson:
    | (ModelFigures & {
        readonly deviance: number
        readonly df: number
        readonly nullLogLik: number
        readonly lr: number
      })
    | null
  readonly negativeBinomial:
    | (ModelFigures & {
        readonly theta: number
        readonly seTheta: number
        readonly thetaOfGlmNb: Figure
        readonly nullTheta?: number
        readonly nullLogLik?: number
        readonly lr?: number
      })
    | null
  readonly overdispersed?: boolean
  readonly logLikSupremum?: readonly [full: number, none: number]
  readonly ratios: readonly (readonly [number, number, number, number, number, number])[] | null
  readonly modelP: Figure
  readonly permanova: PermanovaFigures | null
  readonly permanovaSquareRoot: PermanovaFigures | null
  readonly dispersion: {
    readonly distances: readonly number[]
    readonly negativeSquares: number
    readonly f: Figure
    readonly p: Figure
  } | null
  readonly eigenvalues: readonly number[] | null
  readonly stress: {readonly ofPrincipalAxes: number; readonly least: number} | null
  readonly indicators: readonly (readonly [number, number, number, number, Figure, Figure] | null)[]
  readonly partitionSites: PartitionFigures | null
  readonly partitionHabitats: PartitionFigures | null
  readonly multiSite: {
    readonly sorensen: number
    readonly turnover: number
    readonly nestedness: number
  } | null
  /** Site left out, and the ratio of every pair without it. */
  readonly ratiosWithout: readonly (readonly [site: number, ratios: readonly number[] | null])[]
}

export interface Design extends Named {
  readonly habitat: readonly number[]
  readonly block: readonly number[] | null
  readonly nights: readonly number[]
  readonly counts: readonly (readonly number[])[]
}

interface Cases {
  readonly abundance: readonly (Named & {readonly counts: readonly number[]})[]
  readonly incidence: readonly (Named & {readonly units: number; readonly species: readonly string[]})[]
  readonly designs: readonly Design[]
  readonly pairs: readonly (Named & {readonly a: readonly number[]; readonly b: readonly number[]})[]
  readonly rates: readonly (Named & {readonly catch: readonly number[]; readonly nights: readonly number[]})[]
  readonly kruskalWallis: readonly (Named & {readonly groups: readonly (readonly number[])[]})[]
  readonly holm: readonly (Named & {readonly p: readonly number[]})[]
  readonly shares: readonly (Named & {readonly part: readonly number[]; readonly whole: readonly number[]})[]
  readonly precision: readonly (Named & {
    readonly rate: number
    readonly theta: Figure
    readonly units: number
    readonly effort: number
    readonly halfWidth: number
  })[]
  readonly detection: readonly (Named & {
    readonly expected: readonly number[]
    readonly habitat: readonly number[]
    readonly block: readonly number[] | null
    readonly theta: Figure
    readonly raised: number
  })[]
  readonly equalCoverage: readonly (Named & {readonly members: readonly string[]})[]
  readonly bootstrap: readonly (Named & {readonly of: 'abundance' | 'incidence'})[]
}

interface Reference {
  readonly published: readonly {readonly check: string; readonly agrees: boolean}[]
  readonly publishedFits: {
    readonly mites: {readonly theta: number; readonly seTheta: number} & ModelFigures
    readonly ships: ModelFigures & {
      readonly type: readonly number[]
      readonly year: readonly number[]
      readonly period: readonly number[]
      readonly service: readonly number[]
      readonly incidents: readonly number[]
      readonly deviance: number
      readonly df: number
    }
    readonly plants: {
      readonly weight: readonly number[]
      readonly group: readonly number[]
      readonly f: number
    }
  }
  readonly spots: readonly (readonly [name: string, args: readonly number[], value: number])[]
  readonly garwood: readonly Three[]
  readonly abundance: readonly AbundanceFigures[]
  readonly incidence: readonly IncidenceFigures[]
  readonly equalCoverage: readonly (Named & {
    readonly coverage: Figure
    readonly members: readonly {
      readonly id: string
      readonly leftOut?: string
      readonly coverageAtN?: number
      readonly size?: number
      readonly q0?: number
      readonly q1?: number
      readonly q2?: number
    }[]
  })[]
  readonly bootstrap: readonly (Named & {
    readonly size: number
    readonly atN: Three
    readonly atTwiceN: Three
    readonly asymptotic: Three
    readonly coverage: number
  })[]
  readonly rates: readonly (Named & RateFigures)[]
  readonly pairs: readonly (Named & {
    readonly brayCurtis: Figure
    readonly sorensen: Figure
    readonly jaccard: Figure
    readonly sorensenTurnover: Figure
    readonly sorensenNestedness: Figure
  })[]
  readonly kruskalWallis: readonly (Named & {
    readonly h: Figure
    readonly df: Figure
    readonly pChiSquare: Figure
  })[]
  readonly holm: readonly (Named & {readonly adjusted: readonly number[]})[]
  readonly shares: readonly (Named & ShareFigures)[]
  readonly precision: readonly (Named & {
    readonly present: Figure
    readonly totalEffort: Figure
    readonly units: number
  })[]
  readonly detection: readonly (Named & {readonly ratio: Figure})[]
  readonly designs: readonly DesignFigures[]
}

function read(name: string): string {
  return readFileSync(new URL(name, import.meta.url), 'utf8')
}

export const cases: Cases = JSON.parse(read('cases.json'))

export const reference: Reference = JSON.parse(read('reference.json'))

/** Each case beside the figures of the second implementation, which stand in the same order. */
export function paired<Case extends Named, Figures extends Named>(
  inputs: readonly Case[],
  figures: readonly Figures[]
): readonly {readonly id: string; readonly input: Case; readonly figures: Figures}[] {
  if (inputs.length === 0 || inputs.length !== figures.length) throw new Error('cases and figures differ')
  return inputs.map((input, index) => {
    const own = figures[index]!
    if (own.id !== input.id) throw new Error(`${input.id} stands beside ${own.id}`)
    return {id: input.id, input, figures: own}
  })
}
