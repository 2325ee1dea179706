import {fileNames} from '../model/file-name.ts'
import type {Results} from '../model/results.ts'

/** One document of a report before it is made: which template, with which names bound. */
export interface PlannedDocument {
  /** File name without ending. */
  readonly name: string
  /** Name under which `--only` asks for it. */
  readonly kind: 'chapter' | 'site' | 'season' | 'index' | 'own'
  /** File of templates/. */
  readonly template: string
  /** For lists of documents. */
  readonly title: string
  /** What a reader finds in it: one sentence. */
  readonly summary: string
  readonly scope: Readonly<Record<string, unknown>>
}

/**
 * The documents of a report, in the order in which they are listed: a new reader is one line here and a template.
 *
 * @param own Markdown templates that only this study has: each is a document of its own, but for `site-<site_id>.md`,
 * which takes the place of `site.md` for one site.
 * @param owners of sites, by site: named in their own report and nowhere else.
 */
export function documentPlan(
  results: Results,
  own: readonly string[] = [],
  owners: ReadonlyMap<string, string> = new Map()
): readonly PlannedDocument[] {
  const siteFiles = fileNames(results.sites.map(({id}) => id))
  const usual: readonly PlannedDocument[] = [
    {
      name: 'chapter',
      kind: 'chapter',
      template: 'chapter.md',
      title: 'Methods and results',
      summary: 'for a thesis or a paper, with an appendix on the quality of the data',
      scope: {}
    },
    ...results.sites.map((site): PlannedDocument => {
      const name = `site-${siteFiles.get(site.id) ?? site.id}`
      return {
        name,
        kind: 'site',
        template: own.includes(`${name}.md`) ? `${name}.md` : 'site.md',
        title: site.name,
        summary: 'in plain words, for the owner or manager of the land',
        scope: {site, owner: owners.get(site.id)}
      }
    }),
    {
      name: 'season',
      kind: 'season',
      template: 'season.md',
      title: 'Season record',
      summary: 'every table, every finding, and how each number was made',
      scope: {}
    }
  ]
  const names = own.map((template) => template.replace(/\.md$/, ''))
  const files = fileNames([...usual.map(({name}) => name), 'index', ...names])
  return [
    ...usual,
    ...names
      .filter((name) => !usual.some((other) => other.name === name))
      .map(
        (name): PlannedDocument => ({
          name: files.get(name) ?? name,
          kind: 'own',
          template: `${name}.md`,
          title: name,
          summary: 'from a template of this study',
          scope: {}
        })
      )
  ]
}
