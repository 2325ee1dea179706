import type {Element, ElementContent} from 'hast'
import {sanitize} from 'hast-util-sanitize'
import {toHtml} from 'hast-util-to-html'
import {h} from 'hastscript'
import {stringifyEntities} from 'stringify-entities'
import {sanitizeSchema} from './sanitize-schema.ts'

/** A cell: what stands in it as text of a page. A `th` is the head of its row. */
export interface RowCell {
  readonly tag: 'td' | 'th'
  readonly className: string
  readonly content: string
  /** Space after the content that puts decimal points below each other. */
  readonly padding: string
}

/** Takes the rows of a part of a table, and gives the part: its rows are put in when all else has been sanitised. */
export type KeepRows = (part: 'tbody' | 'tfoot', rows: readonly (readonly RowCell[])[]) => Element

/** The same list each time: by it the library finds the pattern that it has made. */
const signsOfMarkup = ['<', '&']

/**
 * A place for the rows of all tables of a page, which stand there as text. A record has tens of thousands of cells: as
 * elements they would be made, sanitised and written one by one, which takes as long as the rest of the report.
 */
export function rowsKept(): {keep: KeepRows; rows: readonly string[]} {
  const rows: string[] = []
  return {
    rows,
    keep: (part, cells) => h(part, {dataRows: String(rows.push(rowsText(cells)) - 1)})
  }
}

/** Content of a cell that is a plain text. */
export function plainContent(words: string): string {
  return stringifyEntities(words, {subset: signsOfMarkup})
}

/** Content of any other cell. */
export function contentOf(children: ElementContent[]): string {
  return toHtml(sanitize({type: 'root', children}, sanitizeSchema))
}

function rowsText(rows: readonly (readonly RowCell[])[]): string {
  return rows.map((cells) => `<tr>${cells.map(cellText).join('')}</tr>`).join('')
}

function cellText({tag, className, content, padding}: RowCell): string {
  const scope = tag === 'th' ? ' scope="row"' : ''
  const start = `<${tag}${scope}${className === '' ? '' : ` class="${className}"`}>`
  const space = padding === '' ? '' : `<span aria-hidden="true">${padding}</span>`
  return `${start}${content}${space}</${tag}>`
}
