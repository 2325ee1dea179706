import {isDefined} from '../model/quantity.ts'
import type {CompositionResult} from '../model/results.ts'
import {nonMetricScaling} from '../statistics/non-metric-scaling.ts'
import {principalCoordinates} from '../statistics/principal-coordinates.ts'
import type {RandomStream} from '../statistics/random-stream.ts'
import {counted, measured, words} from './counted.ts'
import {short} from './curves.ts'
import type {Community} from './unit-catches.ts'
import {unitRef} from './unit-ref.ts'

/** The cost of an ordination grows with the square of the units and faster; beyond this no picture could be read. */
const mostUnits = 100

/** A stress below this comes of groups that share next to nothing and fall together to points. Common practice, no source. */
const degenerateStress = 0.01

/** Axes of principal coordinates that are given. */
const axesGiven = 3

type Ordinations = Pick<CompositionResult, 'principalCoordinates' | 'nonMetricScaling'>

/** Sampling units as points, the nearer the more alike their catches. */
export function ordinations(
  dissimilarities: readonly (readonly number[])[],
  communities: readonly Community[],
  say: (what: string) => string,
  random: RandomStream
): Ordinations {
  const stressLabel = say('Stress of non-metric scaling in two dimensions')
  const starts = (value: number) => counted(say('Starts of non-metric scaling'), value, words.starts)
  const startsAtBest = (value: number) =>
    counted(say('Starts of non-metric scaling that came near the best stress'), value, words.starts)
  if (communities.length > mostUnits) {
    const notDefined = `there are more than ${mostUnits} sampling units`
    return {
      principalCoordinates: {
        notDefined,
        shares: [],
        imaginary: measured(say('What no axis can show'), 'ratio', {notDefined}),
        scores: []
      },
      nonMetricScaling: {
        stress: measured(stressLabel, 'ratio', {notDefined}),
        starts: starts(0),
        startsAtBest: startsAtBest(0),
        scores: []
      }
    }
  }
  const scaling = nonMetricScaling(dissimilarities, {random})
  const {stress} = scaling
  const degenerate = isDefined(stress) && stress.value < degenerateStress && stress.caution === undefined
  return {
    principalCoordinates: principal(dissimilarities, communities, say),
    nonMetricScaling: {
      stress: measured(
        stressLabel,
        'ratio',
        degenerate
          ? {
              ...stress,
              caution:
                'a stress so near zero means that groups which share next to nothing fell together to points'
            }
          : stress
      ),
      starts: starts(scaling.starts),
      startsAtBest: startsAtBest(scaling.startsAtBest),
      scores: scaling.coordinates.map((at, index) => {
        return {...unitRef(communities[index]!.unit), at: at.map(short)}
      })
    }
  }
}

function principal(
  dissimilarities: readonly (readonly number[])[],
  communities: readonly Community[],
  say: (what: string) => string
): Ordinations['principalCoordinates'] {
  const found = principalCoordinates(dissimilarities)
  const label = say('Eigenvalues below zero over those above')
  if ('notDefined' in found) {
    const {notDefined} = found
    return {notDefined, shares: [], imaginary: measured(label, 'ratio', {notDefined}), scores: []}
  }
  return {
    shares: found.shares.slice(0, axesGiven).map((value, axis) => {
      return {label: say(`Share of principal coordinate ${axis + 1}`), kind: 'share', value}
    }),
    imaginary: measured(label, 'ratio', {value: found.imaginary}),
    scores: found.coordinates.map((at, index) => {
      return {...unitRef(communities[index]!.unit), at: at.slice(0, axesGiven).map(short)}
    })
  }
}
