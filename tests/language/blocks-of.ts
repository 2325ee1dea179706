import type {Element, Nodes, Root} from 'hast'
import {fromHtml} from 'hast-util-from-html'

/** A piece of text on a page, as a reader meets it. */
export interface Block {
  readonly kind: 'byline' | 'paragraph' | 'item' | 'heading' | 'caption' | 'cell' | 'picture' | 'other'
  readonly text: string
  /** The same without the bold words that head it, and with `…` for what stands in code. */
  readonly prose: string
}

const kinds: Readonly<Record<string, Block['kind']>> = {
  p: 'paragraph',
  li: 'item',
  h1: 'heading',
  h2: 'heading',
  h3: 'heading',
  h4: 'heading',
  figcaption: 'caption',
  caption: 'caption',
  td: 'cell',
  th: 'cell',
  summary: 'other',
  desc: 'picture'
}

/** Not text to be read. */
const passedOver = new Set(['style', 'head', 'text', 'title'])

/** The text of a page, block by block; a list of works cited is left out. */
export function blocksOf(page: string): readonly Block[] {
  const found: Block[] = []
  let isPastHead = false
  const visit = (node: Root | Element, within?: Block['kind']): void => {
    for (const child of node.children) {
      if (child.type !== 'element' || passedOver.has(child.tagName) || isReferences(child)) continue
      isPastHead ||= child.tagName === 'h2'
      const kind = within ?? kindOf(child)
      if (kind !== undefined && !holdsBlocks(child)) {
        const placed = kind === 'paragraph' && !isPastHead ? 'byline' : kind
        found.push({kind: placed, text: textOf(child), prose: proseOf(child)})
      } else visit(child, within ?? wholes[child.tagName])
    }
  }
  visit(fromHtml(page))
  return found
}

/** Elements whose paragraphs are no running text. */
const wholes: Readonly<Record<string, Block['kind']>> = {
  li: 'item',
  details: 'other',
  nav: 'other',
  header: 'other'
}

function kindOf({tagName, properties}: Element): Block['kind'] | undefined {
  const classes = Array.isArray(properties.className) ? properties.className : []
  if (tagName === 'p' && classes.includes('caption')) return 'caption'
  if (tagName === 'p' && classes.length > 0) return 'other'
  return kinds[tagName]
}

function holdsBlocks({children}: Element): boolean {
  return children.some((child) => child.type === 'element' && (child.tagName in kinds || holdsBlocks(child)))
}

function isReferences({tagName, properties}: Element): boolean {
  return (
    tagName === 'ul' && Array.isArray(properties.className) && properties.className.includes('references')
  )
}

function textOf(node: Nodes): string {
  if (node.type === 'text') return node.value
  if (node.type === 'element' && (passedOver.has(node.tagName) || node.properties.ariaHidden === 'true'))
    return ''
  return 'children' in node ? node.children.map(textOf).join('') : ''
}

function proseOf(block: Element): string {
  const [first, ...rest] = block.children
  const isHead = first?.type === 'element' && first.tagName === 'strong' && /[.:]$/.test(textOf(first))
  return (isHead ? rest : block.children).map(withoutCode).join('').trim()
}

function withoutCode(node: Nodes): string {
  if (node.type === 'element' && node.tagName === 'code') return '…'
  return node.type === 'element' ? node.children.map(withoutCode).join('') : textOf(node)
}

/** The sentences of a paragraph. */
export function sentencesOf(text: string): readonly string[] {
  return text.split(/(?<=[.!?][’”)]?)\s+(?=[\p{Lu}‘“])/u).filter((sentence) => sentence.trim() !== '')
}
