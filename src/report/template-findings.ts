import type {Finding} from '../model/finding.ts'
import {formatPlace} from '../model/place.ts'
import type {TemplateProblem} from './template-problem.ts'

/**
 * What could not be done in an author's text or a study's own template, as findings. The same fault in a template
 * that serves every site is one finding.
 *
 * @throws Error for a fault in a template of the package itself: that is ours to mend, not the author's.
 */
export function templateFindings(problems: readonly TemplateProblem[]): readonly Finding[] {
  const seen = new Map<string, TemplateProblem>()
  for (const problem of problems) seen.set(`${formatPlace(problem.place)} ${problem.message}`, problem)
  return [...seen.values()].map(({place, message, nearest, kind, remedy}) => {
    if (place.file.startsWith('pitfolio:')) throw new Error(`${formatPlace(place)}: ${message}`)
    return {
      code: kind === 'picture' ? 'picture-not-shown' : 'unknown-name-in-text',
      severity: 'caution',
      place,
      message,
      why:
        kind === 'picture'
          ? 'Some readers, or all of them, will miss what the picture shows.'
          : 'The sentence cannot be finished, so the document shows a mark in its place.',
      remedy:
        nearest === undefined
          ? (remedy ?? 'the season record lists every name that can be called')
          : `did you mean \`${nearest}\`?`
    }
  })
}
