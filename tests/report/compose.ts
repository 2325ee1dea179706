import type {RootContent} from 'mdast'
import {toString as wordsOf} from 'mdast-util-to-string'
import type {Figure} from '../../src/charts/chart.ts'
import {composeDocument, type DocumentInput} from '../../src/report/compose-document.ts'
import type {ReportTable} from '../../src/report/table.ts'
import {formatProblem} from '../../src/report/template-problem.ts'
import type {Work} from '../../src/report/work.ts'
import {measure, notDefined, smallResults} from './small-results.ts'

export const figures: ReadonlyMap<string, Figure> = new Map(
  ['effort', 'rarefaction-carabidae'].map((name) => [
    name,
    {
      name,
      title: 'Effort',
      alternative: 'Bars for two habitats.',
      spec: {mark: 'bar'},
      data: {
        columns: ['habitat', 'nights'],
        rows: [
          ['oak', 120.5],
          ['ash', null]
        ]
      }
    }
  ])
)

export const tables: ReadonlyMap<string, ReportTable> = new Map([
  [
    'rates',
    {
      name: 'rates',
      columns: [
        {head: 'Taxon', align: 'left'},
        {head: 'Rate', unit: 'per 100 trap-nights', align: 'right'}
      ],
      rows: [
        [
          {type: 'taxon', taxon: 'Carabus nemoralis', rank: 'species', authority: 'Müller, 1764'},
          {type: 'measure', measure: measure(53.333, 'rate', undefined, {caution: 'one site only'})}
        ],
        [
          {type: 'text', text: '=1+1 | *x* <script>'},
          {type: 'measure', measure: notDefined('no traps stood there')}
        ]
      ],
      foot: [
        [
          {type: 'text', text: 'All'},
          {type: 'measure', measure: measure(123, 'rate')}
        ]
      ],
      empty: 'Nothing was caught.'
    }
  ],
  ['none', {name: 'none', columns: [{head: 'Taxon', align: 'left'}], rows: [], empty: 'Nothing was caught.'}]
])

export const references: readonly Work[] = [
  {
    id: 'chao-jost-2012',
    type: 'article-journal',
    author: [
      {family: 'Chao', given: 'A'},
      {family: 'Jost', given: 'L'}
    ],
    issued: {'date-parts': [[2012]]},
    title: 'Coverage-based rarefaction',
    'container-title': 'Ecology',
    volume: '93',
    issue: '12',
    page: '2533-2547',
    DOI: '10.1890/11-1952.1'
  },
  {
    id: 'chao-2014',
    type: 'article-journal',
    author: [
      {family: 'Chao', given: 'A'},
      {family: 'Gotelli', given: 'NJ'},
      {family: 'Hsieh', given: 'TC'}
    ],
    issued: {'date-parts': [[2014]]},
    title: 'Rarefaction and extrapolation',
    'container-title': 'Ecological Monographs'
  },
  {
    id: 'chao-2014-other',
    type: 'book',
    author: [
      {family: 'Chao', given: 'A'},
      {family: 'Chiu', given: 'CH'},
      {family: 'Jost', given: 'L'}
    ],
    issued: {'date-parts': [[2014]]},
    title: 'Unifying diversity',
    publisher: 'A & B_C'
  }
]

/** A document of one template, with the small results and everything that can be called. */
export function composed(text: string, more: Partial<DocumentInput> = {}) {
  const {document, problems} = composeDocument({
    name: 'chapter',
    template: {file: 'chapter.md', text},
    results: smallResults,
    findings: [],
    figures,
    tables,
    references,
    texts: new Map(),
    ...more
  })
  return {document, problems: problems.map(formatProblem)}
}

/** The words of each block that a template makes; fails on any problem. */
export function blocksOf(text: string, more: Partial<DocumentInput> = {}): string[] {
  const {document, problems} = composed(text, more)
  if (problems.length > 0) throw new Error(problems.join('\n'))
  return document.tree.children.map((block: RootContent) => wordsOf(block))
}

/** The words of a template of one paragraph. */
export function wordsFrom(text: string, more: Partial<DocumentInput> = {}): string {
  return blocksOf(text, more).join('\n')
}
