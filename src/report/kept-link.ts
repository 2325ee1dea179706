import type {Image, Link, RootContent} from 'mdast'

/** A link that a page may hold: to the web, to a mail address, or within the report. Of any other only the words are left. */
export function keptLink(link: Link, problem: (message: string) => void): RootContent[] {
  const {type, url, title, children} = link
  if (isSafe(url, ['http', 'https', 'mailto'])) return [{type, url, title: title ?? null, children}]
  problem(`links to '${url}' are left out`)
  return children
}

/** A picture of the study folder; of any other only its words are left, for a page asks nothing of another host. */
export function keptPicture(
  {type, url, title, alt}: Image,
  problem: (message: string) => void
): RootContent[] {
  if (isSafe(url, []) && !url.startsWith('//')) return [{type, url, title: title ?? null, alt: alt ?? ''}]
  problem('pictures must lie in the study folder; only its words are kept')
  return alt ? [{type: 'text', value: alt}] : []
}

function isSafe(url: string, protocols: readonly string[]): boolean {
  const [, protocol] = /^\s*([^/?#:]*):/.exec(url) ?? []
  return protocol === undefined || protocols.includes(protocol.toLowerCase())
}
