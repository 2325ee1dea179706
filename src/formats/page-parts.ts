import type {Element, ElementContent} from 'hast'
import {h} from 'hastscript'
import {kindWords, type PageKind, type ReportPage} from './page-kind.ts'

/** A heading of the page, for the list of its contents. */
export interface Section {
  readonly id: string
  readonly depth: number
  readonly title: string
}

/**
 * The way from a page to the front page and the study's other documents. A site report, which goes to one owner,
 * leads nowhere; site reports are reached from the front page only.
 */
export function documentNavigation(
  kind: PageKind,
  name: string,
  documents: readonly ReportPage[]
): Element | undefined {
  if (kind === 'site' || kind === 'index') return undefined
  const others = documents.filter((other) => other.kind !== 'site' && other.kind !== 'index')
  const link = (href: string, words: string, isThis: boolean) =>
    h('li', h('a', isThis ? {href, ariaCurrent: 'page'} : {href}, words))
  return h('nav.documents', {ariaLabel: 'Documents of this study'}, [
    h('ul', [
      link('index.html', kindWords.index, false),
      ...others.map((other) => link(other.href, kindWords[other.kind], other.name === name))
    ])
  ])
}

/** A document on the front page, like the label of a drawer: what it is, its title, what it tells, its other forms. */
export function documentCard(page: ReportPage, title: ElementContent[], told: ElementContent[]): Element {
  const {kind, href, also = []} = page
  return h('li', [
    h('p.card-kind', kindWords[kind]),
    h('p.card-title', h('a', {href}, title)),
    ...(told.length > 0 ? [h('p', told)] : []),
    ...(also.length > 0 ? [h('p.card-also', ['Also as ', ...links(also)])] : [])
  ])
}

/** A site report on the front page, of which there may be many: one line. */
export function siteLine(
  {href, also = []}: ReportPage,
  title: ElementContent[],
  told: ElementContent[]
): Element {
  return h('li', [
    h('a', {href}, title),
    ...told,
    ...(also.length > 0 ? [' ', h('span.card-also', links(also))] : [])
  ])
}

/** The other forms of a page, for its foot. */
export function otherForms(document: ReportPage | undefined): Element | undefined {
  const also = document?.also ?? []
  return also.length > 0 ? h('p.other-forms', ['This page also as ', ...links(also)]) : undefined
}

/** The sections of a long page. */
export function contents(sections: readonly Section[], kind: PageKind): Element | undefined {
  const shown = sections.filter(({depth}) => depth === 2)
  if ((kind !== 'chapter' && kind !== 'season') || shown.length < 4) return undefined
  return h('nav.contents', {ariaLabel: 'Contents'}, [
    h('p.contents-head', 'Contents'),
    h(
      'ol',
      shown.map(({id, title}) => h('li', h('a', {href: `#${id}`}, title)))
    )
  ])
}

function links(also: NonNullable<ReportPage['also']>): (Element | string)[] {
  return also.flatMap(({label, href}, index) => {
    const link = h('a', {href}, label)
    return index === 0 ? [link] : [', ', link]
  })
}
