import {readFileSync} from 'node:fs'
import {html, type PageInput} from '../../src/formats/index.ts'
import type {ReportPage} from '../../src/formats/page-kind.ts'
import type {DocumentInput} from '../../src/report/compose-document.ts'
import {composed} from '../report/compose.ts'

const templates = new Map(
  ['page.html', 'page.css'].map((name) => [
    name,
    readFileSync(new URL(`../../templates/${name}`, import.meta.url), 'utf8')
  ])
)

export const pages: readonly ReportPage[] = [
  {
    name: 'chapter',
    kind: 'chapter',
    title: 'Chapter',
    summary: 'for a thesis',
    href: 'chapter.html',
    also: [{label: 'Markdown', href: 'chapter.md'}]
  },
  {name: 'site-o1', kind: 'site', title: 'Upper Oak', summary: 'for its owner', href: 'site-o1.html'},
  {name: 'site-a1', kind: 'site', title: 'Lower Ash', summary: 'for its owner', href: 'site-a1.html'},
  {name: 'season', kind: 'season', title: 'Season record', summary: 'everything', href: 'season.html'}
]

const svg = (id: string) =>
  `<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" role="img" width="300" height="100" viewBox="0 0 300 100" aria-labelledby="title_${id}"><title id="title_${id}">Effort</title><path d="M0 0h10"/></svg>`

/** A page of one template, with a small picture for each figure. */
export function pageOf(
  text: string,
  name = 'chapter',
  more: Partial<PageInput> = {},
  material: Partial<DocumentInput> = {}
): string {
  const {document} = composed(text, {name, scope: {documents: pages}, ...material})
  return html({
    document,
    templates,
    documents: pages,
    study: {title: 'Ash & <Elm>', season: '2026'},
    ...more
  })(new Map(['effort', 'rarefaction-carabidae'].map((figure) => [figure, svg(`figure-${figure}`)])))
}

/** Every directive and every kind of block, with text that tries to break out. */
export const everything = `# :text[stated.title]

Of :value[effort.net] at 12:30, :taxon[taxa.0] and :text[stated.permits] (:cite[chao-2014 chao-jost-2012]); see :see[figure-effort] and :see[table-rates].
Ask jane@example.org or https://example.org/a_b. A note[^1].

## Effort

:::figure{name=effort}
Effort of *two* habitats.
:::

### Effort

:::table{name=rates}
Rates of taxa | *as caught*.
:::

:::table{name=none}
Nothing.
:::

- one
- [x] two

| a | b |
|:--|--:|
| :text[stated.permits] | 2 |

## Footnote label

Text.

## References

::references

[^1]: The note.
`
