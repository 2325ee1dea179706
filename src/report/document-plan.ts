import {fileNames} from '../model/file-name.ts'
import type {Results} from '../model/results.ts'

/** One document of a report before it is made: which template, with which names bound. */
export interface PlannedDocument {
  /** File name without ending. */
  readonly name: string
  /** Name under which `--only` asks for it. */
  readonly kind: 'chapter' | 'site' | 'season' | 'index'
  /** File of templates/. */
  readonly template: string
  /** For lists of documents. */
  readonly title: string
  /** What a reader finds in it: one sentence. */
  readonly summary: string
  readonly scope: Readonly<Record<string, unknown>>
}

/** The documents of a report, in the order in which they are listed: a new reader is one line here and a template. */
export function documentPlan(results: Results): readonly PlannedDocument[] {
  const siteFiles = fileNames(results.sites.map(({id}) => id))
  return [
    {
      name: 'chapter',
      kind: 'chapter',
      template: 'chapter.md',
      title: 'Methods and results',
      summary: 'for a thesis or a paper, with an appendix on the quality of the data',
      scope: {}
    },
    ...results.sites.map(
      (site): PlannedDocument => ({
        name: `site-${siteFiles.get(site.id) ?? site.id}`,
        kind: 'site',
        template: 'site.md',
        title: `Site report: ${site.name}`,
        summary: 'in plain words, for the owner or manager of the land',
        scope: {site}
      })
    ),
    {
      name: 'season',
      kind: 'season',
      template: 'season.md',
      title: 'Season record',
      summary: 'every table, every finding, and how each number was made',
      scope: {}
    }
  ]
}
