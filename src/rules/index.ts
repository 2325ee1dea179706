import {ambiguousDate} from './ambiguous-date.ts'
import {ambiguousNumber} from './ambiguous-number.ts'
import {blankCells} from './blank-cells.ts'
import {catchInUnsampledVisit} from './catch-in-unsampled-visit.ts'
import {catchWithoutTrap} from './catch-without-trap.ts'
import {catchWithoutVisit} from './catch-without-visit.ts'
import {cellsDisagree} from './cells-disagree.ts'
import {coarseCoordinates} from './coarse-coordinates.ts'
import {confoundedWithHabitat} from './confounded-with-habitat.ts'
import {coordinateOffTheMap} from './coordinate-off-the-map.ts'
import {countNotWhole} from './count-not-whole.ts'
import {countOutlier} from './count-outlier.ts'
import {duplicateCatchRow} from './duplicate-catch-row.ts'
import {duplicateColumn} from './duplicate-column.ts'
import {duplicateId} from './duplicate-id.ts'
import {duplicateVisit} from './duplicate-visit.ts'
import {emptyRequiredCell} from './empty-required-cell.ts'
import {encodingGuessed} from './encoding-guessed.ts'
import {failureOutsideVisit} from './failure-outside-visit.ts'
import {fewSitesInAHabitat} from './few-sites-in-a-habitat.ts'
import {fewTrapsAtASite} from './few-traps-at-a-site.ts'
import {gapBetweenVisits} from './gap-between-visits.ts'
import {glycolOfUnknownKind} from './glycol-of-unknown-kind.ts'
import {habitatSpelledTwoWays} from './habitat-spelled-two-ways.ts'
import {habitatStructureNotRecorded} from './habitat-structure-not-recorded.ts'
import {hazardousFluid} from './hazardous-fluid.ts'
import {implausibleBodyLength} from './implausible-body-length.ts'
import {impossibleSexOrStage} from './impossible-sex-or-stage.ts'
import {incompleteArrayVisit} from './incomplete-array-visit.ts'
import {intervalFarFromProtocol} from './interval-far-from-protocol.ts'
import {intervalFarFromTheOthers} from './interval-far-from-the-others.ts'
import {intervalTooLongForFluid} from './interval-too-long-for-fluid.ts'
import {invalidOrcid} from './invalid-orcid.ts'
import {invalidSetting} from './invalid-setting.ts'
import {judgementWithoutEffect} from './judgement-without-effect.ts'
import {linesPassedOver} from './lines-passed-over.ts'
import {lossesDifferBetweenHabitats} from './losses-differ-between-habitats.ts'
import {nameSettled} from './name-settled.ts'
import {namelessColumn} from './nameless-column.ts'
import {noTaxaTable} from './no-taxa-table.ts'
import {nothingCaught} from './nothing-caught.ts'
import {openCupsInHeavyRain} from './open-cups-in-heavy-rain.ts'
import {overlappingVisits} from './overlapping-visits.ts'
import {personNotListed} from './person-not-listed.ts'
import {pooledTrapsDisagree} from './pooled-traps-disagree.ts'
import {raggedRow} from './ragged-row.ts'
import {rankAgainstName} from './rank-against-name.ts'
import {repeatedCatchEntry} from './repeated-catch-entry.ts'
import {rimNotFlush} from './rim-not-flush.ts'
import {rowOfSomethingSetAside} from './row-of-something-set-aside.ts'
import type {Rule} from './rule.ts'
import {sensitiveTaxonShownExactly} from './sensitive-taxon-shown-exactly.ts'
import {shortSeason} from './short-season.ts'
import {shortSettling} from './short-settling.ts'
import {siteFarFromTheOthers} from './site-far-from-the-others.ts'
import {siteWithoutEffort} from './site-without-effort.ts'
import {sitesAtOnePosition} from './sites-at-one-position.ts'
import {sortedPartMissing} from './sorted-part-missing.ts'
import {swappedCoordinates} from './swapped-coordinates.ts'
import {taxonNotInTaxaTable} from './taxon-not-in-taxa-table.ts'
import {taxonSpelledTwoWays} from './taxon-spelled-two-ways.ts'
import {totalsRow} from './totals-row.ts'
import {trapsCloseTogether} from './traps-close-together.ts'
import {trapsCloserThanLaidOut} from './traps-closer-than-laid-out.ts'
import {trapsMissingFromRound} from './traps-missing-from-round.ts'
import {unclosedQuote} from './unclosed-quote.ts'
import {unequalIntervals} from './unequal-intervals.ts'
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
import {unusualDilution} from './unusual-dilution.ts'
import {unusualFluidDepth} from './unusual-fluid-depth.ts'
import {unusualLicence} from './unusual-licence.ts'
import {unusualRimDiameter} from './unusual-rim-diameter.ts'
import {vertebrateInCatch} from './vertebrate-in-catch.ts'
import {vertebratesNotRecorded} from './vertebrates-not-recorded.ts'
import {visitEndsBeforeItStarts} from './visit-ends-before-it-starts.ts'
import {visitOutsideSeason} from './visit-outside-season.ts'
import {visitWithoutCatchRecord} from './visit-without-catch-record.ts'
import {visitWithoutOpeningDate} from './visit-without-opening-date.ts'

/**
 * Every rule, in the order in which they run: what cannot be read, then rows one by one, then rows against each
 * other, then what hangs on rows set aside before. A row counts under the first rule that sets it aside. The rules
 * behind those set nothing aside; they look at the rows in use: first what in the records is doubtful, then what in
 * the design and the protocol a reader should know.
 */
export const rules = [
  invalidSetting,
  unknownSetting,
  judgementWithoutEffect,
  encodingGuessed,
  linesPassedOver,
  unknownColumn,
  duplicateColumn,
  totalsRow,
  unclosedQuote,
  raggedRow,
  namelessColumn,
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
  siteWithoutEffort,
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
  nothingCaught,

  gapBetweenVisits,
  trapsMissingFromRound,
  intervalFarFromProtocol,
  intervalFarFromTheOthers,
  pooledTrapsDisagree,
  sortedPartMissing,
  habitatSpelledTwoWays,
  taxonSpelledTwoWays,
  rankAgainstName,
  implausibleBodyLength,
  impossibleSexOrStage,
  countOutlier,
  vertebrateInCatch,
  swappedCoordinates,
  sitesAtOnePosition,
  siteFarFromTheOthers,
  coarseCoordinates,
  trapsCloserThanLaidOut,
  sensitiveTaxonShownExactly,
  personNotListed,
  invalidOrcid,
  unusualLicence,

  confoundedWithHabitat,
  unequalIntervals,
  lossesDifferBetweenHabitats,
  incompleteArrayVisit,
  fewSitesInAHabitat,
  fewTrapsAtASite,
  trapsCloseTogether,
  shortSeason,
  shortSettling,
  unusualRimDiameter,
  openCupsInHeavyRain,
  rimNotFlush,
  intervalTooLongForFluid,
  unusualDilution,
  unusualFluidDepth,
  glycolOfUnknownKind,
  hazardousFluid,
  habitatStructureNotRecorded,
  vertebratesNotRecorded
] as const satisfies readonly Rule[]

export type RuleCode = (typeof rules)[number]['code']
