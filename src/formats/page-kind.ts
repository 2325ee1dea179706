/** What a page is, which decides its look and what it links to. */
export type PageKind = 'index' | 'chapter' | 'season' | 'site'

/**
 * A page of the report as other pages name it. The front page's template is given all of them as
 * `documents`, and apart as `mainDocuments` and `siteReports`.
 */
export interface ReportPage {
  readonly name: string
  readonly kind: PageKind
  readonly title: string
  /** What it is, for the front page: a sentence. */
  readonly summary: string
  /** Address of its page, from the report folder: `chapter.html`. */
  readonly href: string
  /** The same document in other forms, for example `{label: 'Markdown', href: 'chapter.md'}`. */
  readonly also?: readonly {readonly label: string; readonly href: string}[]
}

export const kindWords: Readonly<Record<PageKind, string>> = {
  index: 'Front page',
  chapter: 'Methods and results',
  season: 'Season record',
  site: 'Site report'
}

/** The kind of a document by its name; a study's own documents look like the chapter. */
export function pageKind(name: string): PageKind {
  if (name === 'index' || name === 'season') return name
  return name.startsWith('site-') ? 'site' : 'chapter'
}
