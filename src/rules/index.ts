import {ambiguousDate} from './ambiguous-date.ts'
import {ambiguousNumber} from './ambiguous-number.ts'
import {blankCells} from './blank-cells.ts'
import {catchInUnsampledVisit} from './catch-in-unsampled-visit.ts'
import {catchWithoutTrap} from './catch-without-trap.ts'
import {catchWithoutVisit} from './catch-without-visit.ts'
import {cellsDisagree} from './cells-disagree.ts'
import {coordinateOffTheMap} from './coordinate-off-the-map.ts'
import {countNotWhole} from './count-not-whole.ts'
import {duplicateCatchRow} from './duplicate-catch-row.ts'
import {duplicateColumn} from './duplicate-column.ts'
import {duplicateId} from './duplicate-id.ts'
import {duplicateVisit} from './duplicate-visit.ts'
import {emptyRequiredCell} from './empty-required-cell.ts'
import {encodingGuessed} from './encoding-guessed.ts'
import {failureOutsideVisit} from './failure-outside-visit.ts'
import {invalidSetting} from './invalid-setting.ts'
import {linesPassedOver} from './lines-passed-over.ts'
import {nameSettled} from './name-settled.ts'
import {noTaxaTable} from './no-taxa-table.ts'
import {nothingCaught} from './nothing-caught.ts'
import {overlappingVisits} from './overlapping-visits.ts'
import {raggedRow} from './ragged-row.ts'
import {repeatedCatchEntry} from './repeated-catch-entry.ts'
import {rowOfSomethingSetAside} from './row-of-something-set-aside.ts'
import type {Rule} from './rule.ts'
import {taxonNotInTaxaTable} from './taxon-not-in-taxa-table.ts'
import {unclosedQuote} from './unclosed-quote.ts'
import {unknownColumn} from './unknown-column.ts'
import {unknownCondition} from './unknown-condition.ts'
import {unknownHabitat} from './unknown-habitat.ts'
import {unknownSetting} from './unknown-setting.ts'
import {unknownSite} from './unknown-site.ts'
import {unknownTrap} from './unknown-trap.ts'
import {unknownTrapTypeOrFluid} from './unknown-trap-type-or-fluid.ts'
import {unknownWord} from './unknown-word.ts'
import {unreadableDate} from './unreadable-date.ts'
import {unreadableNumber} from './unreadable-number.ts'
import {visitEndsBeforeItStarts} from './visit-ends-before-it-starts.ts'
import {visitOutsideSeason} from './visit-outside-season.ts'
import {visitWithoutCatchRecord} from './visit-without-catch-record.ts'
import {visitWithoutOpeningDate} from './visit-without-opening-date.ts'

/**
 * Every rule, in the order in which they run: what cannot be read, then rows one by one, then rows against each
 * other, then what hangs on rows set aside before. A row counts under the first rule that sets it aside.
 */
export const rules = [
  invalidSetting,
  unknownSetting,
  encodingGuessed,
  linesPassedOver,
  unknownColumn,
  duplicateColumn,
  unclosedQuote,
  raggedRow,
  emptyRequiredCell,
  ambiguousDate,
  unreadableDate,
  countNotWhole,
  ambiguousNumber,
  unreadableNumber,
  coordinateOffTheMap,
  blankCells,
  cellsDisagree,
  nameSettled,
  unknownCondition,
  unknownWord,
  unknownHabitat,
  unknownSite,
  unknownTrap,
  unknownTrapTypeOrFluid,
  duplicateId,
  duplicateVisit,
  visitWithoutOpeningDate,
  visitEndsBeforeItStarts,
  visitOutsideSeason,
  failureOutsideVisit,
  overlappingVisits,
  catchWithoutTrap,
  catchWithoutVisit,
  duplicateCatchRow,
  rowOfSomethingSetAside,
  repeatedCatchEntry,
  visitWithoutCatchRecord,
  catchInUnsampledVisit,
  taxonNotInTaxaTable,
  noTaxaTable,
  nothingCaught
] as const satisfies readonly Rule[]

export type RuleCode = (typeof rules)[number]['code']
