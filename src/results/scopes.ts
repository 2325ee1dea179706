import type {ScopeSetting, Settings} from '../model/settings.ts'
import type {Taxon} from '../model/study.ts'
import type {RecordedName} from './recorded-names.ts'

/** A group of names and life stages that is analysed on its own. */
export interface Scope {
  readonly id: string
  /** Name for readers. */
  readonly label: string
  readonly holds: (name: RecordedName, lifeStage: string) => boolean
}

const groupRanks = ['class', 'order', 'family'] as const

/**
 * The scopes of study.yaml; where it names none, one for each target group, else all recorded names. Adults only,
 * unless other stages are asked for: juveniles and larvae never join an adult scope.
 */
export function scopesOf(settings: Settings, names: readonly RecordedName[]): readonly Scope[] {
  const stated = Object.entries(settings.analysis?.scopes ?? {})
  if (stated.length > 0) return stated.map(([id, setting]) => statedScope(id, setting, names))
  const wanted = settings.target?.life_stages ?? ['adult']
  const stages = wanted.includes('adult') ? ['adult'] : wanted
  const groups = [...new Map((settings.target?.groups ?? []).map((group) => [slug(group), group])).values()]
  if (groups.length === 0) {
    return [scope('all', `All recorded taxa, ${stageWords(stages)}`, stages, names, () => true)]
  }
  return groups.map((group) => {
    const label = `${group}, ${stageWords(stages)}`
    return scope(slug(group), label, stages, names, (name) => belongsToGroup(name, group))
  })
}

function statedScope(id: string, setting: ScopeSetting, names: readonly RecordedName[]): Scope {
  const {label = id, taxa = [], life_stages: stages = ['adult']} = setting
  const listed = new Set(taxa)
  const ranks = groupRanks.filter((rank) => setting[rank] !== undefined)
  const everything = ranks.length === 0 && taxa.length === 0
  return scope(id, label, stages, names, ({name, taxon}) => {
    const grouped = ranks.length > 0 && ranks.every((rank) => isOneOf(taxon?.[rank], setting[rank]!))
    return everything || grouped || listed.has(name)
  })
}

function scope(
  id: string,
  label: string,
  stages: readonly string[],
  names: readonly RecordedName[],
  belongs: (name: RecordedName) => boolean
): Scope {
  const members = names.map(belongs)
  const counted = new Set(stages)
  return {id, label, holds: ({index}, lifeStage) => members[index]! && counted.has(lifeStage)}
}

/** A target group may be a class, an order, a family, a genus or a name itself, whatever its capitals. */
function belongsToGroup({name, taxon}: RecordedName, group: string): boolean {
  const wanted = group.toLowerCase()
  const groups: readonly (keyof Taxon)[] = [...groupRanks, 'genus']
  return (
    name.toLowerCase() === wanted || groups.some((rank) => `${taxon?.[rank] ?? ''}`.toLowerCase() === wanted)
  )
}

function isOneOf(group: string | undefined, wanted: string | readonly string[]): boolean {
  return group !== undefined && (typeof wanted === 'string' ? group === wanted : wanted.includes(group))
}

const manyOf: Readonly<Record<string, string>> = {
  adult: 'adults',
  larva: 'larvae',
  juvenile: 'juveniles',
  pupa: 'pupae',
  egg: 'eggs',
  nymph: 'nymphs',
  subadult: 'subadults'
}

function stageWords(stages: readonly string[]): string {
  return stages.map((stage) => manyOf[stage] ?? stage).join(' and ')
}

/** A group's name as an id that can stand in a file name. */
function slug(group: string): string {
  return group
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
}
