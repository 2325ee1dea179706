import type {List, PhrasingContent, RootContent, Text} from 'mdast'

/** Phrasing that means nothing without content. */
const wrappers = new Set(['emphasis', 'strong', 'delete', 'link'])

/** Blocks that mean nothing without content. */
const holders = new Set(['paragraph', 'heading', 'listItem', 'list', 'blockquote', 'footnoteDefinition'])

/** Blocks whose content is phrasing. */
const lines = new Set(['paragraph', 'heading', 'tableCell', 'figureBlock', 'tableBlock', 'referenceEntry'])

/**
 * Makes good what directives leave behind: empty paragraphs, headings and items go, lists side by side become one,
 * and where two pieces of text meet there is one space at most, and none before a full stop or comma. Text within
 * a piece is left as it is.
 */
export function tidy(nodes: readonly RootContent[]): RootContent[] {
  const kept = nodes.flatMap((node): RootContent[] => {
    if (!('children' in node)) return [node]
    const children = lines.has(node.type) ? tidyLine(node.children as PhrasingContent[]) : tidy(node.children)
    return children.length === 0 && holders.has(node.type) ? [] : [{...node, children} as RootContent]
  })
  const blocks: RootContent[] = []
  for (const node of kept) {
    const before = blocks.at(-1)
    if (node.type !== 'list' || before?.type !== 'list' || before.ordered !== node.ordered) blocks.push(node)
    else blocks[blocks.length - 1] = joinedLists(before, node)
  }
  return blocks
}

function joinedLists(before: List, after: List): List {
  const spread = before.spread === true || after.spread === true
  return {...before, spread, children: [...before.children, ...after.children]}
}

/** Phrasing of a line, without space or breaks at its ends. */
function tidyLine(nodes: readonly PhrasingContent[]): PhrasingContent[] {
  const children = tidyPhrasing(nodes)
  while (isBlank(children[0])) children.shift()
  while (isBlank(children.at(-1))) children.pop()
  const [first] = children
  if (first?.type === 'text') children[0] = {...first, value: first.value.trimStart()}
  const last = children.at(-1)
  if (last?.type === 'text') children[children.length - 1] = {...last, value: last.value.trimEnd()}
  return children
}

function isBlank(node: PhrasingContent | undefined): boolean {
  return node?.type === 'break' || (node?.type === 'text' && node.value.trim() === '')
}

function tidyPhrasing(nodes: readonly PhrasingContent[]): PhrasingContent[] {
  const tidied: PhrasingContent[] = []
  for (const node of nodes) {
    const inner =
      'children' in node ? ({...node, children: tidyPhrasing(node.children)} as PhrasingContent) : node
    if ('children' in inner && inner.children.length === 0 && wrappers.has(inner.type)) continue
    const before = tidied.at(-1)
    if (inner.type !== 'text') tidied.push(inner)
    else if (before?.type === 'text') tidied[tidied.length - 1] = joined(before, inner)
    else if (inner.value !== '') tidied.push({type: 'text', value: inner.value})
  }
  return tidied
}

function joined({value: left}: Text, {value: right}: Text): Text {
  if (left.endsWith('(') && right.startsWith(')')) {
    return joined({type: 'text', value: left.slice(0, -1)}, {type: 'text', value: right.slice(1)})
  }
  if (/^\s*[.,;)](?!\d)/.test(right)) return {type: 'text', value: left.trimEnd() + right.trimStart()}
  return {type: 'text', value: /\s$/.test(left) || left === '' ? left + right.trimStart() : left + right}
}
