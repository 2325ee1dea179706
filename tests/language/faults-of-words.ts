import {blocksOf} from './blocks-of.ts'

/** What a catch is never called, and what nobody may read out of it, in any document. */
const never: readonly (readonly [what: string, pattern: RegExp])[] = [
  ['more than a catch can tell', /(?<!activity-|activity-\s)densit(y|ies)|(?<!rank-)abundan(?!ce-based)/i],
  ['a claim of proof', /\bsignifican(?!t figures)|\bprove[sdn]?\b/i],
  [
    'a ranking of raw numbers of species',
    /\brichest\b|\bricher\b|\bspecies-rich|\bmost species\b|\bfewest species\b|\bpoorest\b|\b(more|fewer) species than\b/i
  ]
]

/** What a landowner's report holds besides: no p, no test, no bare index. */
const neverForOwners: readonly (readonly [what: string, pattern: RegExp])[] = [
  ['a p', /\bp\s*[=<>≤]|\bp-value|\badjusted p\b/i],
  ['a test', /\bpermutation|\bdegrees? of freedom\b|\bstatistical|\bconfidence\b/i],
  ['a bare index', /\b(shannon|simpson|chao|pielou|hill number|sample coverage|bray-curtis)\b/i]
]

/**
 * Words on a page that no catch bears, in running text, captions, table cells and the words for pictures. Titles of
 * works are their authors' own.
 */
export function faultsOfWords(name: string, page: string, titles: readonly string[]): readonly string[] {
  const forbidden = name.startsWith('site-') ? [...never, ...neverForOwners] : never
  return blocksOf(page).flatMap(({text}) => {
    const own = titles.reduce((rest, title) => rest.replace(title, ''), text)
    return forbidden.flatMap(([what, pattern]) =>
      pattern.test(own) ? [`${what}: ${text.slice(0, 200)}`] : []
    )
  })
}

/** Numbered figures and tables of a page that no sentence of it calls. */
export function uncalled(page: string): readonly string[] {
  const called = new Set([...page.matchAll(/<a class="see" href="#([^"]+)"/g)].map(([, id]) => id))
  return [...page.matchAll(/<(?:figure|div class="table-block[^"]*") id="([^"]+)"|<div id="(table-[^"]+)"/g)]
    .map(([, figure, table]) => figure ?? table ?? '')
    .filter((id) => !called.has(id))
    .map((id) => `${id} is called by no sentence`)
}
