import type {Clumping} from './negative-binomial.ts'
import type {Habitat} from './places.ts'

/** Share of the season's catch by round, each with mean 1: when the adults are about. */
export const seasonCurves = {
  /** Breeds in spring, hardly seen after midsummer. */
  spring: [1.3, 1.8, 1.8, 1.3, 0.8, 0.5, 0.3, 0.2],
  /** A short sharp peak in May. */
  may: [0.5, 1.6, 2.3, 1.7, 0.9, 0.5, 0.3, 0.2],
  summer: [0.2, 0.4, 0.8, 1.4, 1.8, 1.6, 1.1, 0.7],
  /** Breeds from late July on. */
  autumn: [0.1, 0.2, 0.4, 0.7, 1.1, 1.6, 1.9, 2.0],
  /** Hatches in May, rests through the summer, comes back to breed. */
  twice: [0.4, 1.4, 2.3, 1.9, 0.8, 0.2, 0.2, 0.8],
  long: [0.8, 1.0, 1.2, 1.2, 1.1, 1.0, 0.9, 0.8]
} as const

export type SeasonCurve = keyof typeof seasonCurves

/** A handful of animals of a kind that hardly ever falls into a trap, at the sites named. */
export interface Stray {
  readonly animals: number
  readonly sites: readonly string[]
}

export interface TaxonSpec {
  readonly taxon: string
  readonly class: 'Insecta' | 'Arachnida'
  readonly order: 'Coleoptera' | 'Araneae'
  readonly family: string
  readonly authority: string
  /** Typical length, from memory. */
  readonly bodyLengthMm: number
  readonly guild: string
  readonly season: SeasonCurve
  readonly clumping: Clumping
  /** Individuals per 100 trap-nights, mean of the season, in each habitat. */
  readonly rates: Readonly<Partial<Record<Habitat, number>>>
  /** Share of a habitat's sites where the kind lives at all; 1 where absent. */
  readonly presence?: number
  readonly stray?: Stray
  /** Whether females and males are usually told apart. */
  readonly sexed: boolean
  readonly englishName?: string
  readonly redList?: string
  readonly legalStatus?: string
  readonly sensitive?: 1 | 2 | 3 | 4
  readonly note?: string
}

export type TaxonDetails = Partial<
  Pick<
    TaxonSpec,
    | 'clumping'
    | 'presence'
    | 'sexed'
    | 'stray'
    | 'englishName'
    | 'redList'
    | 'legalStatus'
    | 'sensitive'
    | 'note'
  >
>
