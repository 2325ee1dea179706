import {isDefined, type Measure, type Quantity} from '../model/quantity.ts'
import type {CompositionResult} from '../model/results.ts'
import {brayCurtis} from '../statistics/bray-curtis.ts'
import {dispersionSizeBias} from '../statistics/dispersion-size-bias.ts'
import {type DispersionTest, dispersionTest, negativeSquareRule} from '../statistics/dispersion-test.ts'
import {dissimilarityMatrix} from '../statistics/dissimilarity-matrix.ts'
import {type Permanova, permanova} from '../statistics/permanova.ts'
import type {PermutationOptions} from '../statistics/permutations.ts'
import {randomStream} from '../statistics/random-stream.ts'
import type {Analysis} from './analysis.ts'
import type {Comparable} from './comparable.ts'
import {counted, measured, words} from './counted.ts'
import {ordinations} from './ordination.ts'
import {noPermutations, permutationsResult, refusal} from './permutations-result.ts'
import type {Scope} from './scopes.ts'
import type {HabitatInUse} from './study-area.ts'
import type {Communities, Community} from './unit-catches.ts'
import {unitRef} from './unit-ref.ts'

/** Under this many sampling units a habitat, a dispersion test that finds nothing shows nothing. Anderson & Walsh 2013. */
const fewUnits = 6

/**
 * Composition of the catch of the sampling units: tests between the habitats compared, and pictures of all units.
 * `communities` holds every unit with effort in the rounds used; those without catch have no composition.
 */
export function compositionResult(
  {communities}: Communities,
  scope: Scope,
  comparable: Comparable,
  analysis: Analysis
): CompositionResult {
  const {supported, reasons, notes, habitats, units} = comparable
  const say = (what: string) => `${what}, ${scope.label}`
  const caught = communities.filter(({individuals}) => individuals > 0)
  const compared = new Set(supported ? units.map(({index}) => index) : [])
  const tested = caught.filter(({unit}) => compared.has(unit.index))
  const stream = (what: string) => randomStream(analysis.seed, `${what}/${scope.id}`)
  const options = (what: string): PermutationOptions => {
    const blocks = comparable.blocks && tested.map(({unit}) => unit.site.record.block!)
    return {...(blocks && {blocks}), limit: analysis.permutations, random: stream(what)}
  }
  const groups = tested.map(({unit}) => unit.site.habitat.id)
  const matrix = matrixOf(tested)
  const location = permanova(matrix, groups, options('permanova'))
  const spread = dispersionTest(matrix, groups, options('dispersion'))
  return {
    supported,
    reasons: [...reasons],
    notes: [...notes],
    dissimilarity: 'Bray-Curtis',
    transformation: 'individuals per 100 trap-nights, not transformed',
    units: counted(say('Sampling units compared by their composition'), tested.length, words.units),
    leftOut: communities
      .filter(({individuals}) => individuals === 0)
      .map(({unit}) => ({...unitRef(unit), reason: 'nothing of the scope was caught there'})),
    permanova: supported ? locationResult(location, say) : noLocation(say, refusal(reasons)),
    dispersion: supported
      ? spreadResult(spread, habitats, say, analysis.unit)
      : noSpread(say, refusal(reasons)),
    ...ordinations(matrixOf(caught), caught, say, stream('non-metric scaling'))
  }
}

/** Bray-Curtis dissimilarities of units that all have a catch, so that every one of them is defined. */
function matrixOf(communities: readonly Community[]): readonly (readonly number[])[] {
  const result = dissimilarityMatrix(
    communities.map(({rates}) => rates),
    brayCurtis
  )
  return 'matrix' in result ? result.matrix : []
}

type Say = (what: string) => string

function degrees(say: Say, what: string, value: number): Measure {
  return counted(say(`${what} degrees of freedom`), value, words.degreesOfFreedom)
}

function locationResult(test: Permanova, say: Say): CompositionResult['permanova'] {
  const what = (kind: Measure['kind'], label: string, quantity: Quantity) =>
    measured(say(label), kind, quantity)
  return {
    r2: what('ratio', 'R² of habitat, permutational analysis of variance', test.r2),
    f: what('ratio', 'Pseudo-F of habitat, permutational analysis of variance', test.pseudoF),
    groupDegreesOfFreedom: degrees(say, 'Habitat', test.degreesOfFreedom.groups),
    residualDegreesOfFreedom: degrees(say, 'Residual', test.degreesOfFreedom.residual),
    p: what('probability', 'p of habitat, permutational analysis of variance', test.p),
    permutations: permutationsResult(test.scheme, say('permutational analysis of variance'))
  }
}

function spreadResult(
  test: DispersionTest,
  habitats: readonly HabitatInUse[],
  say: Say,
  unit: string
): CompositionResult['dispersion'] {
  const lines = habitats.flatMap((habitat) => {
    const own = test.meanDistances.find(({group}) => group === habitat.id)
    if (own === undefined) return []
    return [
      {
        id: habitat.id,
        label: habitat.label,
        style: habitat.style,
        units: counted(say(`Sampling units, ${habitat.label}`), own.samples, words.units),
        distance: measured(say(`Mean distance to the centroid, ${habitat.label}`), 'ratio', {
          value: own.distance
        })
      }
    ]
  })
  return {
    f: measured(say('F of the test of dispersion'), 'ratio', test.f),
    groupDegreesOfFreedom: degrees(say, 'Habitat', test.degreesOfFreedom.groups),
    residualDegreesOfFreedom: degrees(say, 'Residual', test.degreesOfFreedom.residual),
    p: measured(say('p of the test of dispersion'), 'probability', test.p),
    permutations: permutationsResult(test.scheme, say('test of dispersion')),
    habitats: lines,
    negativeSquares: counted(
      say('Sampling units whose squared distance came out below zero'),
      test.negativeSquares,
      words.units
    ),
    negativeSquareRule,
    cautions: spreadCautions(test, unit)
  }
}

/** What unequal spread means for p of the other test. Source: Anderson & Walsh 2013, Ecol. Monogr. 83:557-574. */
function spreadCautions({meanDistances, p}: DispersionTest, unit: string): string[] {
  const sizes = meanDistances.map(({samples}) => samples)
  const bias = dispersionSizeBias(
    sizes,
    meanDistances.map(({distance}) => distance)
  )
  const unequal = `The habitats have unequal numbers of ${unit}s, and`
  const directions = {
    'too small': `${unequal} those with fewer are the more scattered: where the scatter truly differs, p of the test of composition comes out too small.`,
    'too large': `${unequal} those with more are the more scattered: where the scatter truly differs, p of the test of composition comes out too large.`,
    unclear: `${unequal} where their scatter differs, p of the test of composition can err either way.`,
    hardly: undefined
  }
  const direction = directions[bias]
  return [
    ...(direction === undefined ? [] : [direction]),
    ...(sizes.some((size) => size < fewUnits)
      ? [
          isDefined(p) && p.value <= 0.05
            ? `With fewer than six ${unit}s in a habitat, a difference in spread that the test finds is weak evidence: in simulated seasons without any the test rejected in 8 to 11 of 100 instead of 5.`
            : `With fewer than six ${unit}s in a habitat, a test of dispersion that finds no difference shows nothing; a difference in composition can then be one of scatter.`
        ]
      : [])
  ]
}

function noLocation(say: Say, notDefined: string): CompositionResult['permanova'] {
  const none = (label: string, kind: Measure['kind']): Measure => ({label: say(label), kind, notDefined})
  return {
    r2: none('R² of habitat, permutational analysis of variance', 'ratio'),
    f: none('Pseudo-F of habitat, permutational analysis of variance', 'ratio'),
    groupDegreesOfFreedom: none('Habitat degrees of freedom', 'count'),
    residualDegreesOfFreedom: none('Residual degrees of freedom', 'count'),
    p: none('p of habitat, permutational analysis of variance', 'probability'),
    permutations: noPermutations(say('permutational analysis of variance'), notDefined)
  }
}

function noSpread(say: Say, notDefined: string): CompositionResult['dispersion'] {
  const none = (label: string, kind: Measure['kind']): Measure => ({label: say(label), kind, notDefined})
  return {
    f: none('F of the test of dispersion', 'ratio'),
    groupDegreesOfFreedom: none('Habitat degrees of freedom', 'count'),
    residualDegreesOfFreedom: none('Residual degrees of freedom', 'count'),
    p: none('p of the test of dispersion', 'probability'),
    permutations: noPermutations(say('test of dispersion'), notDefined),
    habitats: [],
    negativeSquares: none('Sampling units whose squared distance came out below zero', 'count'),
    negativeSquareRule,
    cautions: []
  }
}
