import {type TypingError, withBenchDoubts, withTypingErrors} from './catch-blemishes.ts'
import {cleanSeason} from './clean-season.ts'
import {sitesCsv} from './places.ts'
import {
  type CatchRow,
  catchCsv,
  inBenchOrder,
  type Season,
  visitsCsv,
  withVouchers
} from './season-records.ts'
import {studyYaml} from './study-yaml.ts'
import {speciesNames, taxaCsv} from './taxa-csv.ts'
import {texts} from './texts.ts'
import {traps, trapsCsv} from './traps.ts'
import {withVisitBlemishes} from './visit-blemishes.ts'
import {weatherCsv} from './weather.ts'

/** Files of a study folder, by path from that folder, in the order in which they are written. */
export type StudyFiles = Map<string, string>

/** The season as the notebook and the bench left it, with its blemishes. */
export function exampleStudy(): StudyFiles {
  const season = blemishedSeason()
  return files(season, weatherCsv('as it was'))
}

/** The same season with nothing gone wrong and nothing mistyped: a check must find no fault in it. */
export function cleanTwin(): StudyFiles {
  const season = cleanSeason()
  return files({visits: season.visits, catch: benchSheet(season.catch)}, weatherCsv('even'))
}

export function blemishedSeason(): Season & {readonly errors: readonly TypingError[]} {
  const season = withVisitBlemishes(cleanSeason())
  const {rows, errors} = withTypingErrors(benchSheet(withBenchDoubts(season.catch)))
  return {visits: season.visits, catch: rows, errors}
}

function benchSheet(rows: readonly CatchRow[]): CatchRow[] {
  return withVouchers(
    inBenchOrder(
      rows,
      traps.map((trap) => trap.trap_id)
    ),
    speciesNames
  )
}

function files(season: Season, weather: string): StudyFiles {
  return new Map([
    ['study.yaml', studyYaml],
    ['sites.csv', sitesCsv()],
    ['traps.csv', trapsCsv()],
    ['visits.csv', visitsCsv(season.visits)],
    ['catch.csv', catchCsv(season.catch)],
    ['taxa.csv', taxaCsv(season.catch)],
    ['weather.csv', weather],
    ...texts
  ])
}
