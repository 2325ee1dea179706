import type {RootContent} from 'mdast'
import type {ContainerDirective, LeafDirective, TextDirective} from 'mdast-util-directive'
import {toString as wordsOf} from 'mdast-util-to-string'
import {nearestName} from '../model/nearest-name.ts'
import type {Place} from '../model/place.ts'
import {asMeasure} from './as-measure.ts'
import {addProblem, type Composition} from './composition.ts'
import type {Directive, DirectiveCall, DirectiveForm} from './directives/directive.ts'
import {directives} from './directives/index.ts'
import {keptLink, keptPicture} from './kept-link.ts'
import {parseTemplate, type Template} from './parse-template.ts'
import {restoreProse} from './restore-prose.ts'
import {lookUp, type Scope} from './scope.ts'
import {shiftHeadings} from './shift-headings.ts'

/** Where evaluation stands: in which text, under which names, and in whose words. */
interface Standpoint {
  readonly composition: Composition
  readonly template: Template
  readonly scope: Scope
  /** A text of the author's, which may not call up another one. */
  readonly included: boolean
}

type DirectiveNode = TextDirective | LeafDirective | ContainerDirective

const forms: Readonly<Record<DirectiveNode['type'], DirectiveForm>> = {
  textDirective: 'text',
  leafDirective: 'leaf',
  containerDirective: 'container'
}

const spelling: Readonly<Record<DirectiveForm, (name: string) => string>> = {
  text: (name) => `:${name}[...]`,
  leaf: (name) => `::${name} on a line of its own`,
  container: (name) => `:::${name} and ::: on lines of their own`
}

/** The content of a template under the names of a scope: directives carried out, raw HTML left out. */
export function evaluateTemplate(composition: Composition, template: Template, scope: Scope): RootContent[] {
  return evaluateAll(template.tree.children, {composition, template, scope, included: false})
}

function evaluateAll(nodes: readonly RootContent[], at: Standpoint): RootContent[] {
  return nodes.flatMap((node) => evaluateNode(node, at))
}

function evaluateNode(node: RootContent, at: Standpoint): RootContent[] {
  const {position: _, ...plain} = node
  switch (node.type) {
    case 'textDirective':
    case 'leafDirective':
    case 'containerDirective':
      return evaluateDirective(node, at)
    case 'text':
      return [{type: 'text', value: node.value.replace(/\s*\n\s*/g, ' ')}]
    case 'html':
      if (!/^<(?:!--|\/)/.test(node.value)) note(at, placeOf(node, at), 'raw HTML is left out')
      return []
    case 'definition':
    case 'yaml':
      return []
    case 'link':
      return keptLink(
        {...node, children: evaluateAll(node.children, at) as typeof node.children},
        (message) => note(at, placeOf(node, at), message)
      )
    case 'image':
      return keptPicture(node, at.template.file, at.composition.material.pictures, (message, remedy) =>
        addProblem(at.composition, {kind: 'picture', place: placeOf(node, at), message, remedy})
      )
    case 'heading':
      if (!at.included) at.composition.headingDepth = node.depth
      break
  }
  return 'children' in node
    ? [{...plain, children: evaluateAll(node.children, at)} as RootContent]
    : [plain as RootContent]
}

function evaluateDirective(node: DirectiveNode, at: Standpoint): RootContent[] {
  const form = forms[node.type]
  const directive = directives.get(node.name)
  const restored = () => restoreProse(node, at.template.text, evaluateAll(node.children, at))
  if (form === 'text' && !isMeant(node, at)) return restored()
  const place = placeOf(node, at)
  if (directive === undefined) {
    note(at, place, `unknown directive '${node.name}'`, nearestName(node.name, [...directives.keys()]))
    return restored()
  }
  if (!directive.forms.includes(form)) {
    note(
      at,
      place,
      `'${node.name}' is written ${directive.forms.map((one) => spelling[one](node.name)).join(' or ')}`
    )
    return restored()
  }
  return directive.evaluate(callOf(node, directive, form, place, at))
}

/** Whether a colon and a word are a directive at all: `12:30`, `1:2` and `a:b` have neither brackets nor braces. */
function isMeant(node: DirectiveNode, at: Standpoint): boolean {
  const start = node.position?.start.offset ?? 0
  return /^[a-z]/i.test(node.name) && /[[{]/.test(at.template.text.charAt(start + 1 + node.name.length))
}

function callOf(
  node: DirectiveNode,
  directive: Directive,
  form: DirectiveForm,
  place: Place,
  at: Standpoint
): DirectiveCall {
  const attributes = Object.fromEntries(
    Object.entries(node.attributes ?? {}).map(([name, value]) => [name, value ?? ''])
  )
  for (const name of Object.keys(attributes)) {
    if (directive.attributes.includes(name)) continue
    note(at, place, `'${node.name}' knows no '${name}'`, nearestName(name, directive.attributes))
  }
  const call: DirectiveCall = {
    form,
    name: node.name,
    label: wordsOf(node).trim(),
    attributes,
    scope: at.scope,
    composition: at.composition,
    place,
    content: (scope = at.scope) => evaluateAll(node.children, {...at, scope}),
    include: (file, text) => include(call, file, text, at),
    lookUp: (path) => lookUp(at.scope, path),
    read: (path, print) => read(call, path, print),
    readMeasure: (path, print) =>
      read(call, path, (value) => {
        const measure = asMeasure(value)
        return measure ? print(measure) : call.problem(`'${path}' is no measure`)
      }),
    problem(message, nearest) {
      note(at, place, message, nearest)
      const named =
        form === 'text' ? call.label : (attributes.name ?? attributes.in ?? attributes.place ?? '')
      const mark: RootContent = {type: 'text', value: `[${named === '' ? call.name : named}?]`}
      return form === 'text' ? [mark] : [{type: 'paragraph', children: [mark]}]
    }
  }
  return call
}

function read(call: DirectiveCall, path: string, print: (value: unknown) => RootContent[]): RootContent[] {
  if (path === '') return call.problem(`${call.name} needs a path`)
  const found = call.lookUp(path)
  if (found.status === 'found') return print(found.value)
  if (found.status === 'unknown') return call.problem(`unknown path '${path}'`, found.nearest)
  return call.problem(`nothing at '${path}' in this study; guard it with given`)
}

function include(call: DirectiveCall, file: string, text: string, at: Standpoint): RootContent[] {
  if (at.included) return call.problem("a text of the author's cannot call up another one")
  const mark = file
    .replace(/^.*\//, '')
    .replace(/\.md$/, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
  const template = parseTemplate(file, text, mark)
  const blocks = evaluateAll(template.tree.children, {...at, template, included: true})
  return shiftHeadings(blocks, at.composition.headingDepth)
}

function placeOf(node: RootContent, {template}: Standpoint): Place {
  const start = node.position?.start
  return start ? {file: template.file, line: start.line, column: start.column} : {file: template.file}
}

function note({composition}: Standpoint, place: Place, message: string, nearest?: string): void {
  addProblem(composition, {place, message, ...(nearest !== undefined && {nearest})})
}
