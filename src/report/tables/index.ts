import type {TableDefinition} from '../table.ts'
import {callableFigures} from './callable-figures.ts'
import {callableNames} from './callable-names.ts'
import {callableTables} from './callable-tables.ts'
import {callableWorks} from './callable-works.ts'
import {checklist} from './checklist.ts'
import {coefficients} from './coefficients.ts'
import {compositionTests} from './composition-tests.ts'
import {conditions} from './conditions.ts'
import {dataDictionary} from './data-dictionary.ts'
import {dissimilarityHabitats} from './dissimilarity-habitats.ts'
import {dissimilaritySites} from './dissimilarity-sites.ts'
import {diversity} from './diversity.ts'
import {diversityBySite} from './diversity-by-site.ts'
import {effortByHabitat} from './effort-by-habitat.ts'
import {effortByRound} from './effort-by-round.ts'
import {effortBySite} from './effort-by-site.ts'
import {effortByTrap} from './effort-by-trap.ts'
import {equalCoverage} from './equal-coverage.ts'
import {estimates} from './estimates.ts'
import {estimators} from './estimators.ts'
import {findings} from './findings.ts'
import {findingsByRule} from './findings-by-rule.ts'
import {fluidsInUse} from './fluids-in-use.ts'
import {hillNumbers} from './hill-numbers.ts'
import {immatures} from './immatures.ts'
import {indicators} from './indicators.ts'
import {indices} from './indices.ts'
import {leadingIndicators} from './leading-indicators.ts'
import {leftOut} from './left-out.ts'
import {listedTaxa} from './listed-taxa.ts'
import {lostExposures} from './lost-exposures.ts'
import {makeUp} from './make-up.ts'
import {modelTests} from './model-tests.ts'
import {outsideEffort} from './outside-effort.ts'
import {partition} from './partition.ts'
import {planning} from './planning.ts'
import {rateRatios} from './rate-ratios.ts'
import {ratesByGroup} from './rates-by-group.ts'
import {ratesByHabitat} from './rates-by-habitat.ts'
import {ratesBySite} from './rates-by-site.ts'
import {residuals} from './residuals.ts'
import {rowBalance} from './row-balance.ts'
import {rowsSetAside} from './rows-set-aside.ts'
import {seasons} from './seasons.ts'
import {sensitivity} from './sensitivity.ts'
import {setAside} from './set-aside.ts'
import {setAsideEffect} from './set-aside-effect.ts'
import {sexes} from './sexes.ts'
import {sexesByHabitat} from './sexes-by-habitat.ts'
import {siteCommonTaxa} from './site-common-taxa.ts'
import {siteTaxa} from './site-taxa.ts'
import {sites} from './sites.ts'
import {speciesSeason} from './species-season.ts'
import {stages} from './stages.ts'
import {taxaByHabitat} from './taxa-by-habitat.ts'
import {taxaBySite} from './taxa-by-site.ts'
import {taxonRates} from './taxon-rates.ts'
import {trapsInUse} from './traps-in-use.ts'
import {vertebrates} from './vertebrates.ts'
import {weather} from './weather.ts'

const tellingOfTheStudy: readonly TableDefinition[] = [
  sites,
  trapsInUse,
  fluidsInUse,
  effortByHabitat,
  effortBySite,
  effortByTrap,
  effortByRound,
  conditions,
  lostExposures,
  sensitivity,
  ratesByHabitat,
  ratesBySite,
  ratesByGroup,
  rateRatios,
  modelTests,
  coefficients,
  residuals,
  seasons,
  speciesSeason,
  planning,
  taxaByHabitat,
  taxaBySite,
  taxonRates,
  listedTaxa,
  outsideEffort,
  immatures,
  sexes,
  sexesByHabitat,
  stages,
  makeUp,
  diversity,
  hillNumbers,
  diversityBySite,
  estimators,
  estimates,
  indices,
  leftOut,
  equalCoverage,
  partition,
  compositionTests,
  dissimilarityHabitats,
  dissimilaritySites,
  leadingIndicators,
  indicators,
  vertebrates,
  weather,
  siteTaxa,
  siteCommonTaxa,
  checklist,
  rowBalance,
  rowsSetAside,
  setAside,
  setAsideEffect,
  findingsByRule,
  findings,
  dataDictionary
]

const tellingOfNames: readonly TableDefinition[] = [callableNames, callableFigures, callableWorks]

/** Every table that a template can call. */
export const tableDefinitions: readonly TableDefinition[] = [
  ...tellingOfTheStudy,
  ...tellingOfNames,
  callableTables([...tellingOfTheStudy, ...tellingOfNames])
]
