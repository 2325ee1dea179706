import type {Heading, RootContent} from 'mdast'

/** An author's headings, set below the section in which the text stands; their order among themselves is kept. */
export function shiftHeadings(blocks: readonly RootContent[], sectionDepth: number): RootContent[] {
  const depths = [...new Set(blocks.filter(isHeading).map(({depth}) => depth))].sort(
    (one, other) => one - other
  )
  const base = Math.max(sectionDepth, 1) + 1
  return blocks.map((block) =>
    isHeading(block) ? {...block, depth: headingDepth(base + depths.indexOf(block.depth))} : block
  )
}

/** Headings in order: one of the first level, and none more than one level below the one before it. */
export function orderHeadings(blocks: readonly RootContent[]): RootContent[] {
  let before = 0
  return blocks.map((block) => {
    if (!isHeading(block)) return block
    before = Math.min(before === 0 ? 1 : Math.max(block.depth, 2), before + 1)
    return {...block, depth: headingDepth(before)}
  })
}

function isHeading(node: RootContent): node is Heading {
  return node.type === 'heading'
}

function headingDepth(depth: number): Heading['depth'] {
  const depths: readonly Heading['depth'][] = [1, 2, 3, 4, 5, 6]
  return depths[depth - 1] ?? 6
}
