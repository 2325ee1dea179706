import type {Nodes, PhrasingContent} from 'mdast'

const label = '[a-z\\d](?:[a-z\\d-]{0,61}[a-z\\d])?'
const mail = `[\\w.+-]{1,64}@${label}(?:\\.${label})+(?<=[a-z])`
const web =
  '(?:https?:\\/\\/|(?<![\\w.])www\\.)[\\w-]+(?:\\.[\\w-]+)+(?:[\\w./?=#%+:~@!$&,;*()-]*[\\w/=#%+~@$&*-])?'

/** Web and mail addresses as people write them in a sentence, without the punctuation after them. */
const address = new RegExp(`(${web}|${mail})`, 'i')

/**
 * Makes links of the addresses that stand in running text, such as a contact. Without that, Markdown would have to
 * write them with backslashes so that they are not taken for links.
 */
export function linkAddresses<Node extends Nodes>(node: Node): Node {
  if (!('children' in node) || node.type === 'link' || !mayHoldAddress(node)) return node
  const children = node.children.flatMap((child): Nodes[] =>
    child.type === 'text' ? linked(child.value) : [linkAddresses(child as Nodes)]
  )
  return {...node, children}
}

/** What every address holds. Most texts have none of it, and trying the pattern on each cell of a record takes long. */
const sign = /@|:\/\/|www\./i

function mayHoldAddress(node: Nodes): boolean {
  if (node.type === 'text') return sign.test(node.value)
  return 'children' in node && (node.children as readonly Nodes[]).some(mayHoldAddress)
}

function linked(text: string): PhrasingContent[] {
  return text
    .split(address)
    .map((part, index): PhrasingContent => {
      if (index % 2 === 0) return {type: 'text', value: part}
      return {type: 'link', url: urlOf(part), title: null, children: [{type: 'text', value: part}]}
    })
    .filter((part) => part.type !== 'text' || part.value !== '')
}

function urlOf(written: string): string {
  if (written.includes('://')) return written
  return written.includes('@') ? `mailto:${written}` : `http://${written}`
}
