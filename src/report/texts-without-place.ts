import {nearestName} from '../model/nearest-name.ts'
import type {Study} from '../model/study.ts'
import type {TemplateProblem} from './template-problem.ts'

/**
 * Texts of the author's that study.yaml places where no document has a place for them.
 *
 * @param asked the places that the documents have.
 */
export function textsWithoutPlace(
  {settings, settingPlace}: Pick<Study, 'settings' | 'settingPlace'>,
  asked: ReadonlySet<string>
): readonly TemplateProblem[] {
  return Object.keys(settings.report?.text ?? {})
    .filter((name) => !asked.has(name))
    .map((name) => {
      const nearest = nearestName(name, asked)
      return {
        place: settingPlace(['report', 'text', name], 'key'),
        message: `no document has a place '${name}' for a text`,
        ...(nearest === undefined ? {remedy: `places are ${[...asked].sort().join(', ')}`} : {nearest})
      }
    })
}
