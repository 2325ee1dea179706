import {nearestName} from '../model/nearest-name.ts'
import type {TemplateProblem} from './template-problem.ts'

/** The templates in force for one study: which file stands behind each name, and its text. */
export interface TemplateSet {
  /** Text by name: `chapter.md`, `page.css`. */
  readonly texts: ReadonlyMap<string, string>
  /** Names of documents that only this study has: Markdown templates of its own, in code-unit order. */
  readonly own: readonly string[]
  /** The file for places in messages: `templates/chapter.md` of the study, `pitfolio:chapter.md` of the package. */
  fileOf(name: string): string
  /** What is wrong with page shells and style sheets of the study's own; the package's stand in for those. */
  readonly problems: readonly TemplateProblem[]
}

/**
 * The package's templates with those of the study's own templates/ folder laid over them. A file in a folder named
 * after the language of the report goes before the one beside that folder, and the study's files before the
 * package's.
 *
 * @param templates the package's, by path inside its templates/.
 * @param texts the study's, by study-relative path.
 */
export function templateSet(
  templates: ReadonlyMap<string, string>,
  texts: ReadonlyMap<string, string>,
  language: string
): TemplateSet {
  const chosen = new Map<string, {file: string; text: string}>()
  const problems: TemplateProblem[] = []
  const lay = (from: Iterable<readonly [string, string]>, folder: string, source: string): void => {
    for (const [path, text] of from) {
      if (!path.startsWith(folder)) continue
      const name = path.slice(folder.length)
      if (name.includes('/')) continue
      const faults = source === '' ? shellProblems(path, text, templates.get(name)) : []
      problems.push(...faults)
      if (faults.length === 0) chosen.set(name, {file: `${source}${path}`, text})
    }
  }
  lay(templates, '', 'pitfolio:')
  lay(templates, `${language}/`, 'pitfolio:')
  const known = new Set(chosen.keys())
  lay(texts, 'templates/', '')
  lay(texts, `templates/${language}/`, '')
  return {
    texts: new Map([...chosen].map(([name, {text}]) => [name, text])),
    own: [...chosen.keys()].filter((name) => name.endsWith('.md') && !known.has(name)).sort(),
    fileOf: (name) => chosen.get(name)?.file ?? `pitfolio:${name}`,
    problems
  }
}

const slot = /\{\{([a-z-]+)\}\}/g

/** A shell may ask only for what the package's shell asks for, and must have a place for the text. */
function shellProblems(file: string, text: string, usual: string | undefined): readonly TemplateProblem[] {
  if (file.endsWith('.md') || usual === undefined) return []
  const known = [...usual.matchAll(slot)].map(([, name = '']) => name)
  const asked = [...text.matchAll(slot)]
  const unknown = asked
    .filter(([, name = '']) => !known.includes(name))
    .map(({0: written, 1: name = '', index}): TemplateProblem => {
      const before = text.slice(0, index).split('\n')
      const nearest = nearestName(name, known)
      return {
        place: {file, line: before.length, column: (before.at(-1) ?? '').length + 1},
        message: `there is no place ${written}; the usual file is used instead`,
        ...(nearest === undefined ? {remedy: `places are ${known.join(', ')}`} : {nearest})
      }
    })
  const isTextless = known.includes('text') && !asked.some(([, name]) => name === 'text')
  return isTextless
    ? [
        ...unknown,
        {
          place: {file},
          message:
            'there is no place {{text}}, so nothing would be on the page; the usual file is used instead',
          remedy: 'put {{text}} where the document belongs'
        }
      ]
    : unknown
}
