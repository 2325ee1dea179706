import type {Nodes, PhrasingContent} from 'mdast'

/** Mail and web addresses as people write them in a sentence, without the punctuation after them. */
const address = /(https?:\/\/[^\s<>"']*[^\s<>"'.,;:!?)\]]|[\w.+-]+@[\w-]+(?:\.[\w-]+)*\.[\w-]*[A-Za-z])/

/**
 * Makes links of the addresses that stand in running text, such as a contact. Without that, Markdown would have to
 * write them with backslashes so that they are not taken for links.
 */
export function linkAddresses<Node extends Nodes>(node: Node): Node {
  if (!('children' in node) || node.type === 'link') return node
  const children = node.children.flatMap((child): Nodes[] =>
    child.type === 'text' ? linked(child.value) : [linkAddresses(child as Nodes)]
  )
  return {...node, children}
}

function linked(text: string): PhrasingContent[] {
  return text
    .split(address)
    .map((part, index): PhrasingContent => {
      if (index % 2 === 0) return {type: 'text', value: part}
      const url = part.includes('://') ? part : `mailto:${part}`
      return {type: 'link', url, title: null, children: [{type: 'text', value: part}]}
    })
    .filter((part) => part.type !== 'text' || part.value !== '')
}
