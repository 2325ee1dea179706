import type {RootContent} from 'mdast'
import type {ContainerDirective, LeafDirective, TextDirective} from 'mdast-util-directive'

/**
 * What was taken for a directive, as it was written: the time in 'at 12:30' is none. The content of a block keeps
 * its place, without its fences; in a sentence the words round the content are written out again.
 */
export function restoreProse(
  node: TextDirective | LeafDirective | ContainerDirective,
  source: string,
  content: RootContent[]
): RootContent[] {
  if (node.type === 'containerDirective') return content
  const start = node.position?.start.offset ?? 0
  const end = node.position?.end.offset ?? start
  const first = node.children.at(0)?.position?.start.offset ?? end
  const last = node.children.at(-1)?.position?.end.offset ?? end
  const phrasing: RootContent[] = [
    {type: 'text', value: source.slice(start, first)},
    ...content,
    {type: 'text', value: source.slice(last, end)}
  ]
  return node.type === 'textDirective' ? phrasing : [{type: 'paragraph', children: phrasing} as RootContent]
}
