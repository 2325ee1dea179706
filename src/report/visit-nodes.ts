import type {Nodes} from 'mdast'

/** Shows every node of a tree: a node before what is in it. */
export function visitNodes(node: Nodes, seen: (node: Nodes) => void): void {
  seen(node)
  if ('children' in node) for (const child of node.children) visitNodes(child, seen)
}
