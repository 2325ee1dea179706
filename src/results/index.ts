import {isoDay} from '../model/day.ts'
import type {Results} from '../model/results.ts'
import type {Study, UsableStudy} from '../model/study.ts'
import {analysisOf} from './analysis.ts'
import {catchResult, trapCatchResult} from './catch.ts'
import {checklistResult} from './checklist.ts'
import {comparableHabitats} from './comparable.ts'
import {comparisonResult} from './comparison.ts'
import {designResult} from './design.ts'
import {effortResult} from './effort.ts'
import {leaveOutUnknowable} from './effort-by-site.ts'
import {habitatResults} from './habitats.ts'
import {methodsUsed} from './methods-used.ts'
import {partsOf} from './parts.ts'
import {planningResult} from './planning.ts'
import {protocolResult} from './protocol.ts'
import {recordsResult} from './records.ts'
import {plainRunner, type Runner} from './replicates.ts'
import {scopeResults} from './scope-results.ts'
import {roundResults, seasonWindow, seasonWords} from './season.ts'
import {sensitivityResult} from './sensitivity.ts'
import {setAsideResult} from './set-aside.ts'
import {sexesAndStagesResult} from './sexes-and-stages.ts'
import {siteMap} from './site-map.ts'
import {siteResults} from './sites.ts'
import {statedValues} from './stated.ts'
import {taxonResults} from './taxa.ts'
import {catchesInRounds, caughtByUnit} from './unit-catches.ts'
import {vertebratesResult} from './vertebrates.ts'
import {weatherResult} from './weather.ts'
import {withoutHiddenNames} from './without-hidden-names.ts'

export {splitRunner} from './replicates.ts'

/**
 * Every number that a report may print, from the rows in use. The same study gives the same results, row order
 * aside, whatever runner computes the bootstrap replicates.
 */
export function computeResults(usable: UsableStudy, runner: Runner = plainRunner): Results {
  const {study} = usable
  const analysis = analysisOf(study)
  const parts = partsOf(analysis)
  const habitats = habitatResults(analysis, parts)
  const sites = siteResults(analysis, parts)
  const sitesPooled = new Set(analysis.catches.filter(({trap}) => trap === undefined).map(({site}) => site))
  const issued = issuedOn(study)
  const comparable = comparableHabitats(analysis, parts)
  const caught = caughtByUnit(catchesInRounds(analysis, comparable), analysis, () => true)
  const compared = {id: 'all names', label: 'all names', caught}
  const comparison = comparisonResult(compared, comparable, analysis)
  const weather = weatherResult(analysis)
  const caughtInAll = caughtByUnit(parts.study.catches, analysis, ({inRates}) => inRates)
  const sections: Omit<Results, 'methodsUsed'> = {
    format: 'pitfolio-results',
    formatVersion: 1,
    ...statedValues(study),
    ...(issued !== undefined && {issued}),
    season: seasonWords(study),
    confidence: analysis.confidence,
    seed: analysis.seed,
    replicates: analysis.replicates,
    permutations: analysis.permutations,
    records: recordsResult(usable),
    design: designResult(analysis, parts, sites, comparable),
    protocol: protocolResult(analysis),
    effort: effortResult(parts.study, analysis.planned),
    catch: catchResult(parts.study, analysis),
    vertebrates: vertebratesResult(parts.study),
    sensitivity: {
      ...sensitivityResult(analysis, parts, habitats),
      setAside: setAsideResult(usable, analysis, parts)
    },
    habitats,
    sites,
    map: siteMap(sites),
    ...(weather !== undefined && {weather}),
    rounds: roundResults(analysis, parts),
    traps: analysis.area.traps.map((trap) => {
      const part = parts.ofTrap(trap)
      return {
        id: trap.id,
        site: trap.site.id,
        habitat: trap.site.habitat.id,
        effort: effortResult(part, analysis.planned),
        catch: trapCatchResult(part, analysis, sitesPooled.has(trap.site))
      }
    }),
    taxa: taxonResults(analysis, parts),
    scopes: scopeResults(analysis, parts, comparable, runner),
    comparison,
    planning: planningResult({...compared, caughtInAll}, comparison, comparable, analysis, parts),
    sexesAndStages: sexesAndStagesResult(analysis),
    checklist: checklistResult(analysis)
  }
  const known = study.effortBySite ? leaveOutUnknowable(sections, study.sites) : sections
  const told = withoutHiddenNames(known)
  return {...told, methodsUsed: methodsUsed(told)}
}

/** The day that documents carry: study.yaml's, else the last collection. Never a clock. */
function issuedOn({settings, exposures, catch: records}: Study): string | undefined {
  if (settings.issued !== undefined) return settings.issued
  const collected = seasonWindow(exposures).lastCollected
  if (collected !== undefined) return collected
  const days = records.flatMap((record) => (record.collected === undefined ? [] : [record.collected.day]))
  return days.length === 0 ? undefined : isoDay(days.reduce((last, day) => Math.max(last, day)))
}
