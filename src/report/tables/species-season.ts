import {formatDate, formatDates, type Language, statedLanguage} from '../../model/format-date.ts'
import type {Results, SpeciesSeasonResult} from '../../model/results.ts'
import type {Cell, TableDefinition} from '../table.ts'
import {cell} from './cell.ts'
import {numberColumn, wordColumn} from './column.ts'
import {rateUnit} from './rate-columns.ts'

/** Rounds as 'opened to collected': a trap tells of the nights that it stood open and of no single day. */
export const speciesSeason: TableDefinition = {
  name: 'species-season',
  summary: 'Rounds in which each common species was first, last and most often caught.',
  tables: ({results}) => {
    const ranks = rankOf(results)
    const language = statedLanguage(results.stated)
    return results.scopes.map(({id, season}) => ({
      name: `species-season-${id}`,
      columns: [
        wordColumn('Species'),
        numberColumn('Caught', 'individuals'),
        numberColumn('Rounds'),
        wordColumn('First caught, opened to collected'),
        wordColumn('Last caught'),
        wordColumn('Highest activity-density'),
        numberColumn('That was', rateUnit)
      ],
      rows: season.map(({taxon, individuals, rounds, first, last, highest}) => [
        cell.name({taxon, rank: ranks.get(taxon)}),
        cell.measure(individuals),
        cell.measure(rounds),
        roundCell(first, language),
        roundCell(last, language),
        roundCell(highest, language),
        cell.measure(highest.rate)
      ]),
      empty: 'No species was caught often enough to tell of its season.'
    }))
  }
}

function rankOf({taxa}: Results): ReadonlyMap<string, string | undefined> {
  return new Map(taxa.map(({taxon, rank}) => [taxon, rank]))
}

function roundCell({opened, collected}: SpeciesSeasonResult['first'], language: Language): Cell {
  const words =
    opened === undefined
      ? `collected ${formatDate(collected, language) ?? collected}`
      : formatDates(opened, collected, language)
  return cell.text(words)
}
