import type {Parent, PhrasingContent, Root} from 'mdast'
import type {Figure} from '../charts/chart.ts'
import type {ReportTable} from './table.ts'

export type {FigureData} from '../charts/chart.ts'

/** Where a numbered figure stands. Its children are the caption, without the number. */
export interface FigureBlock extends Parent {
  type: 'figureBlock'
  readonly name: string
  readonly number: number
  readonly figure: Figure
  children: PhrasingContent[]
}

/** Where a numbered table stands. Its children are the caption, without the number. */
export interface TableBlock extends Parent {
  type: 'tableBlock'
  readonly name: string
  readonly number: number
  readonly table: ReportTable
  children: PhrasingContent[]
}

/** 'Figure 2' or 'Table 3' in the text; the children are these words. */
export interface CrossReference extends Parent {
  type: 'crossReference'
  /** Id of the thing meant: `figure-<name>` or `table-<name>`. */
  readonly target: string
  children: PhrasingContent[]
}

/** The part of a citation that names one work; the children are its words, such as 'Chao et al. 2014'. */
export interface CitedWork extends Parent {
  type: 'citedWork'
  readonly key: string
  children: PhrasingContent[]
}

/** A link to another document of the same report; the children are its title. */
export interface DocumentLink extends Parent {
  type: 'documentLink'
  readonly name: string
  /** From the report folder: `chapter.html`. */
  readonly href: string
  children: PhrasingContent[]
}

/** The list of the works cited in a document. */
export interface ReferenceList extends Parent {
  type: 'referenceList'
  children: ReferenceEntry[]
}

/** One work, as the list of references prints it. */
export interface ReferenceEntry extends Parent {
  type: 'referenceEntry'
  readonly key: string
  children: PhrasingContent[]
}

declare module 'mdast' {
  interface PhrasingContentMap {
    crossReference: CrossReference
    citedWork: CitedWork
    documentLink: DocumentLink
  }
  interface BlockContentMap {
    figureBlock: FigureBlock
    tableBlock: TableBlock
    referenceList: ReferenceList
  }
  interface RootContentMap {
    crossReference: CrossReference
    citedWork: CitedWork
    documentLink: DocumentLink
    figureBlock: FigureBlock
    tableBlock: TableBlock
    referenceList: ReferenceList
    referenceEntry: ReferenceEntry
  }
}

/** A finished document, the same for every format. */
export interface Document {
  /** File name without ending: `chapter`, `site-oak-1`. */
  readonly name: string
  /** Words of the first heading. */
  readonly title: string
  readonly tree: Root
  /** Keys of the works cited, in the order of the list of references. */
  readonly cited: readonly string[]
}
