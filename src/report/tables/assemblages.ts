import type {AssemblageResult, ScopeResult} from '../../model/results.ts'

/** The assemblages that a diversity table lists: each habitat and, where that is not the same, the whole study. */
export function assemblages(scope: ScopeResult): readonly AssemblageResult[] {
  return scope.habitats.length === 1 ? scope.habitats : [...scope.habitats, scope.study]
}
