import {activityDensity} from './activity-density.ts'
import type {Chart} from './chart.ts'
import {composition} from './composition.ts'
import {coverageCurves} from './coverage-curves.ts'
import {effort} from './effort.ts'
import {hillProfile} from './hill-profile.ts'
import {incidenceCurves} from './incidence-curves.ts'
import {ordination} from './ordination.ts'
import {rankAbundance} from './rank-abundance.ts'
import {rarefaction} from './rarefaction.ts'
import {season} from './season.ts'
import {siteMap} from './site-map.ts'
import {speciesSeason} from './species-season.ts'
import {trapLayout} from './trap-layout.ts'

/** Every chart, in the order in which the season record lists them. */
export const charts: readonly Chart[] = [
  siteMap,
  effort,
  activityDensity,
  rankAbundance,
  composition,
  rarefaction,
  coverageCurves,
  incidenceCurves,
  hillProfile,
  ordination,
  season,
  speciesSeason,
  trapLayout
]
