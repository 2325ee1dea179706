import type {PhrasingContent} from 'mdast'

/** Ranks above the genus, which stand upright. */
const higherRanks = new Set([
  'domain',
  'kingdom',
  'phylum',
  'subphylum',
  'superclass',
  'class',
  'subclass',
  'infraclass',
  'superorder',
  'order',
  'suborder',
  'infraorder',
  'parvorder',
  'superfamily',
  'epifamily',
  'family',
  'subfamily',
  'supertribe',
  'tribe',
  'subtribe',
  'division',
  'clade',
  'guild',
  'group'
])

/**
 * Names above the genus, told by their endings where no rank tells it: those of the zoological code (ICZN 1999,
 * article 29.2) for superfamily to tribe, and those of the orders and classes that pitfall traps catch.
 */
const higherName =
  /(?:oidea|idae|inae|ini|ptera|poda)$|^(?:Araneae|Opiliones|Pseudoscorpiones|Acari|Collembola)$/i

/** Words inside a name that are no part of it: 'sp.', 'cf.', 'agg.', numbers and letters of morphospecies. */
const uprightWord =
  /^(?:spp?|cf|aff|nr|near|agg|aggregate|gr|group|ssp|subsp|var|f|forma|morph|indet|gen|nov|complex|s\.l|s\.str|s\.s|sensu|lato|stricto|type|female|male|larva|larvae|juv)\.?$|\d|^[A-Z]$|^[×?]/

/**
 * A scientific name set as print wants it: italic at genus rank and below, upright above it and in words such as
 * 'sp.', 'cf.' and 'agg.' (ICZN 1999, general recommendation 6). Without a rank, one word is upright and two
 * words are a species.
 */
export function taxonName(name: string, rank?: string): PhrasingContent[] {
  const words = name.split(' ').filter((word) => word !== '')
  const [first = ''] = words
  const known = rank?.toLowerCase()
  const byName = known === undefined || known === 'morphospecies'
  const isHigher = byName ? words.length < 2 || higherName.test(first) : higherRanks.has(known)
  if (isHigher) return [{type: 'text', value: words.join(' ')}]
  const runs: {italic: boolean; words: string[]}[] = []
  let author = false
  for (const [index, word] of words.entries()) {
    // A capital after the genus begins an author's name; a subgenus stands in brackets.
    author ||= index > 0 && /^[^a-z×]/.test(word) && !/^\(\p{Lu}\p{Ll}+\)$/u.test(word)
    const italic = !author && !uprightWord.test(word)
    const last = runs.at(-1)
    if (last?.italic === italic) last.words.push(word)
    else runs.push({italic, words: [word]})
  }
  return runs.flatMap((run, index): PhrasingContent[] => {
    const value = run.words.join(' ')
    // The spaces stay outside the emphasis: within it Markdown cannot write them.
    if (run.italic) return [{type: 'emphasis', children: [{type: 'text', value}]}]
    return [{type: 'text', value: `${index === 0 ? '' : ' '}${value}${index === runs.length - 1 ? '' : ' '}`}]
  })
}
