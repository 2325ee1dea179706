import type {Measure} from '../model/quantity.ts'
import type {EffortResult, Results} from '../model/results.ts'
import type {Site} from '../model/study.ts'
import {counted, words} from './counted.ts'

type Sections = Omit<Results, 'methodsUsed'>

const reason = 'effort is known only as one figure for each site'

/**
 * Results of old data, whose effort is one figure for each site: what hangs on traps, visits and rounds cannot be
 * known and says so, instead of telling of the one exposure that stands for a whole site.
 */
export function leaveOutUnknowable(results: Sections, sites: readonly Site[]): Sections {
  const trapsOf = (label: string, of: readonly Site[]): Measure => {
    const known = of.flatMap(({traps}) => (traps === undefined ? [] : [traps]))
    return known.length < of.length
      ? {label, kind: 'count', unit: words.traps, notDefined: 'the number of traps is not on record'}
      : counted(
          label,
          known.reduce((sum, traps) => sum + traps, 0),
          words.traps
        )
  }
  const {design, protocol, sensitivity} = results
  return {
    ...results,
    effort: ofSites(results.effort),
    design: {
      ...design,
      traps: trapsOf(design.traps.label, sites),
      rounds: unknown(design.rounds),
      exposures: unknown(design.exposures),
      sharedRounds: unknown(design.sharedRounds),
      unsharedRounds: []
    },
    protocol: {
      ...protocol,
      effortKnownFor: 'sites',
      intervalShortest: unknown(protocol.intervalShortest),
      intervalMedian: unknown(protocol.intervalMedian),
      intervalLongest: unknown(protocol.intervalLongest),
      roundsAchieved: unknown(protocol.roundsAchieved),
      settlingShortest: unknown(protocol.settlingShortest),
      settlingLongest: unknown(protocol.settlingLongest),
      trapsPerSiteSmallest: unknown(protocol.trapsPerSiteSmallest),
      trapsPerSiteLargest: unknown(protocol.trapsPerSiteLargest),
      conditions: [],
      lostExposures: []
    },
    sensitivity: {
      ...sensitivity,
      variants: [],
      smallestShareLost: unknown(sensitivity.smallestShareLost),
      largestShareLost: unknown(sensitivity.largestShareLost),
      differenceInShareLost: unknown(sensitivity.differenceInShareLost),
      lossDiffers: false
    },
    habitats: results.habitats.map((habitat) => ({
      ...habitat,
      traps: trapsOf(
        habitat.traps.label,
        sites.filter((site) => site.habitat === habitat.id)
      ),
      rounds: unknown(habitat.rounds),
      effort: ofSites(habitat.effort)
    })),
    sites: results.sites.map((site) => ({
      ...site,
      traps: trapsOf(
        site.traps.label,
        sites.filter(({siteId}) => siteId === site.id)
      ),
      rounds: unknown(site.rounds),
      removal: {
        recorded: unknown(site.removal.recorded),
        notRecorded: unknown(site.removal.notRecorded),
        gone: unknown(site.removal.gone)
      },
      lostBecause: [],
      effort: ofSites(site.effort)
    })),
    rounds: [],
    traps: [],
    taxa: results.taxa.map(({firstRound: _first, lastRound: _last, ...taxon}) => taxon),
    scopes: results.scopes.map((scope) => ({...scope, season: []}))
  }
}

function ofSites(effort: EffortResult): EffortResult {
  return {
    ...effort,
    exposures: unknown(effort.exposures),
    planned: unknown(effort.planned),
    unsorted: unknown(effort.unsorted),
    lost: unknown(effort.lost),
    shareLost: unknown(effort.shareLost)
  }
}

function unknown({label, kind, unit}: Measure): Measure {
  return {label, kind, ...(unit !== undefined && {unit}), notDefined: reason}
}
