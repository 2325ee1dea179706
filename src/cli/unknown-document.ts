import {nearestName} from '../model/nearest-name.ts'
import type {Outputs} from '../model/source.ts'
import type {Trouble} from './terminal/trouble-text.ts'

/** Documents that every study has; its own templates may add others. */
const usualDocuments = ['chapter', 'site', 'season', 'index']

/**
 * The trouble with a document that was asked for and is not there: `site` stands for the reports of all sites,
 * `site-OAK1` for one.
 */
export function unknownDocument(asked: readonly string[], outputs: Outputs): Trouble | undefined {
  const made = [...outputs.keys()]
    .map((path) => /^([^/]+)\.(html|md)$/.exec(path)?.[1])
    .filter((name) => name !== undefined)
  const unknown = asked.find(
    (name) => !made.some((document) => document === name || document.startsWith(`${name}-`))
  )
  if (unknown === undefined) return undefined
  const meant = nearestName(unknown, [...new Set([...usualDocuments, ...made])])
  return {
    message: `there is no document ${unknown}; nothing was written`,
    remedy:
      meant === undefined
        ? 'documents are chapter, season, site (for every site), site-<site_id> (for one) and templates of your own'
        : `did you mean \`${meant}\`?`
  }
}
