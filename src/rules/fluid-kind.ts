import type {StatedFluid} from './fieldwork.ts'

export type FluidKind =
  | 'ethylene glycol'
  | 'propylene glycol'
  | 'glycol of unknown kind'
  | 'formaldehyde'
  | 'methanol'
  | 'ethanol'
  | 'brine'
  | 'acid'
  | 'water'

/** The first that fits decides: `glycol` alone is known only after both kinds were looked for, water comes last. */
const patterns: readonly (readonly [FluidKind, RegExp])[] = [
  ['propylene glycol', /propylene[ -]?glycol|propane-?1,2-?diol|propanediol|\bm?pg\b/i],
  ['ethylene glycol', /(?<!poly)ethylene[ -]?glycol|ethane-?1,2-?diol|ethanediol|\bm?eg\b/i],
  ['formaldehyde', /formaldehyde|formalin|formol|methanal/i],
  ['glycol of unknown kind', /(?<!polyethylene[ -]?)glycol|anti-?freeze/i],
  ['methanol', /\bmethanol|methyl alcohol|wood alcohol/i],
  ['ethanol', /ethanol|(?<!propyl[ -]?)alcohol|methylated|\bims\b/i],
  ['acid', /vinegar|\bacid\b/i],
  ['brine', /brine|\bsalt|sodium chloride|nacl/i],
  ['water', /water|detergent|soap|washing-up/i]
]

/** What a fluid is by the words of study.yaml; undefined where they fit nothing known. */
export function fluidKind({substance = ''}: StatedFluid): FluidKind | undefined {
  return patterns.find(([, pattern]) => pattern.test(substance))?.[0]
}

export function isGlycol(kind: FluidKind | undefined): boolean {
  return kind?.includes('glycol') ?? false
}
