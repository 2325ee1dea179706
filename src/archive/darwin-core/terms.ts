/** Namespaces of the terms in a Darwin Core archive. */
const namespaces = {
  dwc: 'http://rs.tdwg.org/dwc/terms/',
  dcterms: 'http://purl.org/dc/terms/',
  /** Humboldt Extension, TDWG. */
  eco: 'http://rs.tdwg.org/eco/terms/'
} as const

export type Term = `${keyof typeof namespaces}:${string}`

/** `dwc:eventID` in full. */
export function termIri(term: Term): string {
  const colon = term.indexOf(':')
  return namespaces[term.slice(0, colon) as keyof typeof namespaces] + term.slice(colon + 1)
}

/** `eventID`: the head of its column. */
export function termName(term: Term): string {
  return term.slice(term.indexOf(':') + 1)
}
