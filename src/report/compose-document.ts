import type {Root} from 'mdast'
import {toString as wordsOf} from 'mdast-util-to-string'
import type {Finding} from '../model/finding.ts'
import {nearestName} from '../model/nearest-name.ts'
import {formatPlace} from '../model/place.ts'
import {addProblem, type Composition, type Material, newComposition} from './composition.ts'
import type {Document} from './document.ts'
import {evaluateTemplate} from './evaluate.ts'
import {parseTemplate} from './parse-template.ts'
import {rootScope} from './scope.ts'
import {orderHeadings} from './shift-headings.ts'
import type {TemplateProblem} from './template-problem.ts'
import {tidy} from './tidy.ts'
import {fillReferenceLists, wordCitations} from './word-citations.ts'

/** What a document is made from. */
export interface DocumentInput extends Material {
  /** File name without ending: `chapter`, `site-oak-1`, `season`, `index`. */
  readonly name: string
  /** The tree is read from the text where it is absent. */
  readonly template: {readonly file: string; readonly text: string; readonly tree?: Root | undefined}
  readonly findings: readonly Finding[]
  /** Names that this document can use besides the results: `{site: results.sites[0]}` for a site report. */
  readonly scope?: Readonly<Record<string, unknown>>
}

export interface ComposedDocument {
  readonly document: Document
  /** What could not be done, in the order of the template; empty when all is well. */
  readonly problems: readonly TemplateProblem[]
  /** Names under which the template asks for texts of the author's. */
  readonly authorPlaces: ReadonlySet<string>
}

/**
 * Fills a template with results: the document that every format starts from. Pure, and never throws for what a
 * template or a text of the author's says: a bad name leaves a mark such as `[effort.nett?]` and a problem with
 * its place. Throws only for results that hold a number that is not finite.
 */
export function composeDocument(input: DocumentInput): ComposedDocument {
  const composition = newComposition(input)
  const {file, text, tree} = input.template
  const template = tree === undefined ? parseTemplate(file, text) : {file, text, tree}
  const scope = rootScope(input.results, {
    findings: input.findings.map(tellable),
    tool: undefined,
    ...input.scope
  })
  const blocks = evaluateTemplate(composition, template, scope)
  wordCrossReferences(composition)
  const entries = wordCitations(composition)
  if (entries.length > 0 && !blocks.some(({type}) => type === 'referenceList')) {
    addProblem(composition, {
      place: {file: template.file},
      message: 'works are cited, and no ::references lists them'
    })
  }
  const children = orderHeadings(tidy(fillReferenceLists(blocks, entries)))
  const heading = children.find(({type}) => type === 'heading')
  return {
    document: {
      name: input.name,
      title: heading === undefined ? input.name : wordsOf(heading),
      tree: {type: 'root', children},
      cited: entries.map(({key}) => key)
    },
    problems: composition.problems,
    authorPlaces: composition.authorPlaces
  }
}

/** 'Figure 2' wherever a figure is referred to, now that all have their numbers. */
function wordCrossReferences(composition: Composition): void {
  for (const {node, place} of composition.crossReferences) {
    const number = composition.placed.get(node.target)
    const kind = node.target.startsWith('figure-') ? 'Figure' : 'Table'
    if (number === undefined) {
      const nearest = nearestName(node.target, [...composition.placed.keys()])
      const message = `'${node.target}' does not stand in this document`
      addProblem(composition, {place, message, ...(nearest !== undefined && {nearest})})
    }
    node.children = [{type: 'text', value: number === undefined ? `[${node.target}?]` : `${kind} ${number}`}]
  }
}

/** A finding in the form in which a template can tell it: every name is there, and its place is words. */
function tellable({
  code,
  severity,
  place,
  message,
  why,
  remedy,
  cell
}: Finding): Readonly<Record<string, string>> {
  return {code, severity, place: formatPlace(place), message, why, remedy, cell: cell ?? ''}
}
