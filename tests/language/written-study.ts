import {dayOf, isoDay} from '../../src/model/day.ts'
import {csvText} from '../example-season/csv-text.ts'

type Row = Readonly<Record<string, string>>

/** One opening to one collection of a trap, while the files are written. */
export interface WrittenVisit {
  readonly site: string
  readonly habitat: string
  readonly trap: string
  /** From 0, among all traps and among the rounds. */
  readonly trapNumber: number
  readonly round: number
}

export interface WrittenStudy {
  /** Habitat of each site. */
  readonly sites: Readonly<Record<string, string>>
  readonly trapsAtSite?: number
  readonly rounds?: number
  /** Cells of sites.csv, traps.csv and visits.csv besides the usual ones. */
  readonly siteCells?: (site: string, index: number) => Row
  readonly trapCells?: (trap: string) => Row
  readonly visitCells?: (visit: WrittenVisit) => Row
  /** How many of each species a visit caught, in the order of `species`. */
  readonly caught?: (visit: WrittenVisit) => readonly number[]
  readonly catchCells?: (visit: WrittenVisit) => Row
  /** study.yaml, after what every study here says. */
  readonly settings?: string
}

export type WrittenFiles = ReadonlyMap<string, string>

export const species = [
  'Abax parallelepipedus',
  'Pterostichus melanarius',
  'Nebria brevicollis',
  'Carabus violaceus',
  'Poecilus cupreus',
  'Harpalus rufipes',
  'Loricera pilicornis',
  'Trechus quadristriatus',
  'Amara aenea',
  'Calathus fuscipes'
]

/** Nothing dear to compute: the words do not depend on the number of replicates. */
export const quick =
  'analysis: {replicates: 10, permutations: 99, scopes: {carabids: {label: ground beetles, family: Carabidae}}}\n'

const firstDay = dayOf(2024, 5, 6) ?? 0
export const roundDay = (round: number) => isoDay(firstDay + 14 * round)

/** The files of a study in a few lines. Names of traps, dates and everything that is not asked for follow a pattern. */
export function writtenStudy(study: WrittenStudy): WrittenFiles {
  const {sites, trapsAtSite = 2, rounds = 3, caught = usualCatch} = study
  const habitats = [...new Set(Object.values(sites))]
  const traps = Object.keys(sites).flatMap((site) =>
    Array.from({length: trapsAtSite}, (_, index) => ({site, trap: `${site}-${index + 1}`}))
  )
  const visits: readonly WrittenVisit[] = Array.from({length: rounds}, (_, round) =>
    traps.map(({site, trap}, trapNumber) => ({site, habitat: sites[site] ?? '', trap, trapNumber, round}))
  ).flat()
  return new Map([
    [
      'study.yaml',
      `title: Beetles of the Quill valley\nseason: {start: 2024-05-01, end: 2024-12-31}\nhabitats: {${habitats
        .map((habitat) => `${habitat}: ${habitat} land`)
        .join(', ')}}\n${study.settings ?? quick}`
    ],
    [
      'sites.csv',
      table(
        Object.entries(sites).map(([site_id, habitat], index) => ({
          site_id,
          habitat,
          ...study.siteCells?.(site_id, index)
        })),
        ['site_id', 'habitat']
      )
    ],
    [
      'traps.csv',
      table(
        traps.map(({trap, site}) => ({trap_id: trap, site_id: site, ...study.trapCells?.(trap)})),
        ['trap_id', 'site_id']
      )
    ],
    [
      'visits.csv',
      table(
        visits.map((visit) => ({
          trap_id: visit.trap,
          opened: roundDay(visit.round),
          collected: roundDay(visit.round + 1),
          sample: caught(visit).some((count) => count > 0) ? 'sorted' : 'empty',
          ...study.visitCells?.(visit)
        })),
        ['trap_id', 'opened', 'collected', 'sample']
      )
    ],
    [
      'catch.csv',
      table(
        visits.flatMap((visit) =>
          caught(visit).flatMap((count, index) =>
            count === 0
              ? []
              : [
                  {
                    trap_id: visit.trap,
                    collected: roundDay(visit.round + 1),
                    taxon: species[index] ?? '',
                    count: String(count),
                    ...study.catchCells?.(visit)
                  }
                ]
          )
        ),
        ['trap_id', 'collected', 'taxon', 'count']
      )
    ],
    [
      'taxa.csv',
      table(
        species.map((taxon) => ({taxon, rank: 'species', order: 'Coleoptera', family: 'Carabidae'})),
        ['taxon']
      )
    ]
  ])
}

/** Uneven, and the same every time. */
export function usualCatch({trapNumber, round}: WrittenVisit): readonly number[] {
  return species.map((_, index) => Math.max(0, ((trapNumber * 7 + round * 5 + index * 11) % 9) - index))
}

function table(rows: readonly Row[], usual: readonly string[]): string {
  return csvText([...new Set([...usual, ...rows.flatMap((row) => Object.keys(row))])], rows)
}
