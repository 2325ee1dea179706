import {blemishedSeason} from './example-study.ts'
import {visitBlemishes} from './visit-blemishes.ts'

/** The list of everything that is wrong with the example on purpose, with the lines where it stands. */
export function blemishesPage(): string {
  const season = blemishedSeason()
  const visitLine = (trap: string, round: string) =>
    season.visits.findIndex((visit) => visit.trap_id === trap && visit.round === round) + 2
  const visits = visitBlemishes.map(({trap, round, changes}) => {
    const {condition, sample, failed_on, remarks, vertebrates_count, vertebrates_what} = changes
    const state = [
      condition && `condition \`${condition}\``,
      failed_on && `failed on ${failed_on}`,
      sample && `sample \`${sample}\``,
      vertebrates_count && `${vertebrates_count} ${vertebrates_what}`,
      remarks
    ]
    return `- visits.csv:${visitLine(trap, round)} ${trap} ${round}: ${state.filter(Boolean).join('; ')}`
  })
  const doubts = season.catch.flatMap((row, index) => {
    const doubt =
      row.life_stage ??
      (row.qualifier && `qualifier \`${row.qualifier}\``) ??
      (row.taxon === 'Amara sp.' ? 'genus only' : undefined) ??
      (row.taxon === 'Platynus assimilis' ? 'older name of `Limodromus assimilis`' : undefined)
    return doubt
      ? [`- catch.csv:${index + 2} ${row.trap_id} ${row.round} ${row.taxon}, ${row.count}: ${doubt}`]
      : []
  })
  const errors = season.errors.map((error) => `- catch.csv:${error.row + 2} ${error.what}`)
  return `# Blemishes of the example study

All data are invented, and so is what went wrong. Written by \`make-example.ts\`; the clean twin has none of it.
Line numbers count the header as line 1.

## Slips of the keyboard (${errors.length})

${errors.join('\n')}

## Traps and vials (${visits.length})

In round R4 the storm of 30 May to 3 June shows in weather.csv, in round R7 the hot dry fortnight.

${visits.join('\n')}

## Names that stop short of a kind, young animals, an older name (${doubts.length})

These are no mistakes: they are what a bench can honestly write.

${doubts.join('\n')}
`
}
