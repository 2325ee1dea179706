import {isoDay} from '../model/day.ts'
import type {Results} from '../model/results.ts'
import type {Study, UsableStudy} from '../model/study.ts'
import {analysisOf} from './analysis.ts'
import {catchResult, trapCatchResult} from './catch.ts'
import {checklistResult} from './checklist.ts'
import {designResult} from './design.ts'
import {scopeResults} from './diversity.ts'
import {effortResult} from './effort.ts'
import {habitatResults} from './habitats.ts'
import {partsOf} from './parts.ts'
import {protocolResult} from './protocol.ts'
import {recordsResult} from './records.ts'
import {roundResults, seasonWindow, seasonWords} from './season.ts'
import {sensitivityResult} from './sensitivity.ts'
import {siteResults} from './sites.ts'
import {statedValues} from './stated.ts'
import {taxonResults} from './taxa.ts'
import {vertebratesResult} from './vertebrates.ts'

/** Every number that a report may print, from the rows in use. The same study gives the same results, row order aside. */
export function computeResults(usable: UsableStudy): Results {
  const {study} = usable
  const analysis = analysisOf(study)
  const parts = partsOf(analysis)
  const habitats = habitatResults(analysis, parts)
  const sites = siteResults(analysis, parts)
  const sitesPooled = new Set(analysis.catches.filter(({trap}) => trap === undefined).map(({site}) => site))
  const issued = issuedOn(study)
  return {
    format: 'pitfolio-results',
    formatVersion: 1,
    ...statedValues(study),
    ...(issued !== undefined && {issued}),
    season: seasonWords(study),
    confidence: analysis.confidence,
    seed: study.settings.analysis?.seed ?? 1,
    records: recordsResult(usable),
    design: designResult(analysis, parts, sites),
    protocol: protocolResult(analysis),
    effort: effortResult(parts.study, analysis.planned),
    catch: catchResult(parts.study, analysis),
    vertebrates: vertebratesResult(parts.study),
    sensitivity: sensitivityResult(analysis, parts, habitats),
    habitats,
    sites,
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
    scopes: scopeResults(analysis, parts),
    checklist: checklistResult(analysis)
  }
}

/** The day that documents carry: study.yaml's, else the last collection. Never a clock. */
function issuedOn({settings, exposures, catch: records}: Study): string | undefined {
  if (settings.issued !== undefined) return settings.issued
  const collected = seasonWindow(exposures).lastCollected
  if (collected !== undefined) return collected
  const days = records.flatMap((record) => (record.collected === undefined ? [] : [record.collected.day]))
  return days.length === 0 ? undefined : isoDay(days.reduce((last, day) => Math.max(last, day)))
}
