import type {SetAsideResult} from '../model/results.ts'
import type {CatchRecord} from '../model/study.ts'
import {chao1} from '../statistics/chao1.ts'
import {frequencyCounts} from '../statistics/frequency-counts.ts'
import {type Analysis, analysisOf} from './analysis.ts'
import {catchResult} from './catch.ts'
import {counted, measured, words} from './counted.ts'
import {type Part, type Parts, partsOf} from './parts.ts'
import {scopeCatch} from './scope-catch.ts'
import type {Scope} from './scopes.ts'

type Effect = Pick<SetAsideResult, 'counted' | 'effect'>
type Headline = SetAsideResult['effect'][number]['habitats'][number]['withThem']

/**
 * The headline numbers of every habitat without and with the rows of the catch that were set aside: those that hold
 * a whole count and name a trap or site in use. Rows of other tables stay aside: a visit or trap that contradicts
 * another cannot count beside it.
 */
export function setAsideEffect(setAside: readonly CatchRecord[], analysis: Analysis, parts: Parts): Effect {
  const {area, study} = analysis
  const placed = setAside.filter(({trapId, siteId, count, sampleFraction}) => {
    const hasPlace = trapId === undefined ? area.siteById.has(siteId ?? '') : area.trapById.has(trapId)
    return hasPlace && Number.isSafeInteger(count) && count >= 0 && sampleFraction > 0 && sampleFraction <= 1
  })
  const rows = counted('Rows set aside that can be counted with the others', placed.length, words.rows)
  if (placed.length === 0) return {counted: rows, effect: []}
  const fuller = analysisOf({...study, catch: [...study.catch, ...placed]})
  const fullerParts = partsOf(fuller)
  const groups: readonly (Scope | undefined)[] = [undefined, ...analysis.scopes]
  return {
    counted: rows,
    effect: groups.map((group, index) => {
      // The same scopes in the same order: names of rows set aside may be new, and number the names anew.
      const fullerGroup = group && fuller.scopes[index - 1]
      const without = headlineOf(analysis, parts, group, 'without rows set aside')
      const withThem = headlineOf(fuller, fullerParts, fullerGroup, 'with rows set aside')
      return {
        of: group?.label ?? 'all names',
        habitats: area.habitats.map((habitat, at) => ({
          id: habitat.id,
          label: habitat.label,
          style: habitat.style,
          without: without(parts.ofHabitat(habitat)),
          withThem: withThem(fullerParts.ofHabitat(fuller.area.habitats[at]!))
        }))
      }
    })
  }
}

function headlineOf(
  analysis: Analysis,
  parts: Parts,
  scope: Scope | undefined,
  how: string
): (part: Part) => Headline {
  const countsIn = scope && scopeCatch(scope, parts.study).countsIn
  return (part) => {
    const {individuals, rate} = catchResult(part, analysis, scope)
    const named = <Kept extends {readonly label: string}>(measure: Kept): Kept => {
      return {...measure, label: `${measure.label}, ${how}`}
    }
    const head = {individuals: named(individuals), rate: named(rate)}
    if (countsIn === undefined || scope === undefined) return head
    const sample = frequencyCounts([...countsIn(part).species.values()])
    const where = `${scope.label}, ${part.where}, ${how}`
    return {
      ...head,
      species: counted(`Species caught, ${where}`, sample.species, words.species),
      chao1: measured(
        `Lower bound of the number of species (Chao1), ${where}`,
        'estimate',
        chao1(sample, analysis.confidence),
        words.species
      )
    }
  }
}
