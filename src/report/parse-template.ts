import type {Definition, Nodes, Root} from 'mdast'
import remarkDirective from 'remark-directive'
import remarkGfm from 'remark-gfm'
import remarkParse from 'remark-parse'
import {unified} from 'unified'
import {visitNodes} from './visit-nodes.ts'

/**
 * Stands for the colon of `12:30` while the text is read, so that what follows the time, a footnote for instance,
 * is not taken for the brackets of a directive. As long as the colon, so that places stay right.
 */
const timeColon = '\ue000'

const reader = unified().use(remarkParse).use(remarkGfm).use(remarkDirective)

/** A template, or a text of the author's, as a tree that still holds its directives, with the text for its places. */
export interface Template {
  readonly file: string
  readonly text: string
  readonly tree: Root
}

/** Texts that are kept at hand; a report has some dozens. */
const mostKept = 100

const kept = new Map<string, Template>()

/**
 * Reads Markdown (GFM) with directives. Links by reference become plain links, and footnotes get the `mark` in
 * their names, so that texts of several files can stand in one document. A text that
 * is called up again, as a template is by every site, is read once: nobody changes a tree.
 */
export function parseTemplate(file: string, text: string, mark?: string): Template {
  const key = JSON.stringify([file, text, mark])
  const known = kept.get(key)
  if (known !== undefined) return known
  if (kept.size >= mostKept) kept.clear()
  const template = parsed(file, text, mark)
  kept.set(key, template)
  return template
}

function parsed(file: string, text: string, mark?: string): Template {
  const tree = reader.parse(text.replace(/(?<=\d):(?=\d)/g, timeColon))
  const definitions = new Map<string, Definition>()
  visitNodes(tree, restoreColons)
  visitNodes(tree, (node) => {
    if (node.type === 'definition' && !definitions.has(node.identifier))
      definitions.set(node.identifier, node)
  })
  visitNodes(tree, (node) => {
    if (!('children' in node)) return
    const children: Nodes[] = node.children
    children.forEach((child, index) => {
      if (child.type === 'linkReference' || child.type === 'imageReference') {
        const definition = definitions.get(child.identifier)
        if (definition) children[index] = resolved(child, definition)
      } else if (
        mark !== undefined &&
        (child.type === 'footnoteReference' || child.type === 'footnoteDefinition')
      ) {
        child.identifier = `${mark}-${child.identifier}`
        child.label = child.identifier
      }
    })
  })
  return {file, text, tree}
}

/** Puts the colons back into every text of a node. */
function restoreColons(node: Nodes): void {
  const texts: Record<string, unknown> = Object(node)
  for (const [name, text] of Object.entries(texts)) {
    if (typeof text === 'string') texts[name] = text.replaceAll(timeColon, ':')
  }
  if ('attributes' in node) {
    for (const [name, text] of Object.entries(node.attributes ?? {})) {
      if (node.attributes) node.attributes[name] = text?.replaceAll(timeColon, ':')
    }
  }
}

function resolved(
  node: Extract<Nodes, {type: 'linkReference' | 'imageReference'}>,
  {url, title}: Definition
): Nodes {
  const at = node.position === undefined ? {} : {position: node.position}
  return node.type === 'linkReference'
    ? {type: 'link', url, title: title ?? null, children: node.children, ...at}
    : {type: 'image', url, title: title ?? null, alt: node.alt ?? '', ...at}
}
