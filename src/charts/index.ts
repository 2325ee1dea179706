import {activityDensity} from './activity-density.ts'
import type {Chart} from './chart.ts'
import {effort} from './effort.ts'
import {rankAbundance} from './rank-abundance.ts'
import {rarefaction} from './rarefaction.ts'
import {season} from './season.ts'

/** Every chart, in the order in which the season record lists them. */
export const charts: readonly Chart[] = [effort, activityDensity, rankAbundance, rarefaction, season]
