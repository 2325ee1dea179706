import type {Figure} from './charts/chart.ts'
import type {ComposedReport} from './compose-report.ts'
import {bibtex, docx, figureCsv, html, json, markdown, type Pictures, tableCsv} from './formats/index.ts'
import {fileName} from './model/file-name.ts'
import type {Settings} from './model/settings.ts'
import type {Document} from './report/document.ts'
import {picturesIn} from './report/pictures-named.ts'
import {dataAddress} from './report/study-picture.ts'
import {rasteriseSvg} from './svg/rasterise-svg.ts'

/** Files of a report by name. */
export type Files = readonly (readonly [string, string | Uint8Array])[]

/** What every format of a document takes, beside the document. */
export interface Setting {
  readonly study: {readonly title: string; readonly season: string}
  readonly language: string
  readonly authors: readonly string[]
  /** Day that a document bears. */
  readonly issued?: string
  /** Photographs as `data:` addresses, by the path that a text names. */
  readonly photos: ReadonlyMap<string, string>
}

export function settingOf(
  {title = 'A pitfall-trap study', people = [], report}: Settings,
  {season, issued}: {readonly season: string; readonly issued?: string | undefined},
  composed: ComposedReport
): Setting {
  return {
    study: {title, season},
    language: report?.language ?? 'en-GB',
    authors: people.map(({name}) => name),
    ...(issued !== undefined && {issued}),
    photos: new Map(
      composed.pictures.flatMap((picture) =>
        'bytes' in picture ? [[encodeURI(picture.path), dataAddress(picture.type, picture.bytes)]] : []
      )
    )
  }
}

/** Documents as Markdown; the front page lists pages, and has no use without them. */
export function markdownFiles({documents}: ComposedReport): Files {
  return documents
    .filter(({name}) => name !== 'index')
    .map((document) => [`${document.name}.md`, markdown(document)])
}

/** Documents as pages, complete but for their pictures. */
export function pageFiles(composed: ComposedReport, setting: Setting): (pictures: Pictures) => Files {
  const {documents, pages, templates} = composed
  const made = documents.map((document) => {
    const page = html({...setting, document, templates, documents: pages})
    return {name: `${document.name}.html`, page}
  })
  return (pictures) => made.map(({name, page}) => [name, page(pictures)])
}

/** Documents for Word, with a bitmap beside each drawing for programs that show no SVG. */
export async function wordFiles(
  {documents, sentOut}: ComposedReport,
  setting: Setting,
  pictures: Pictures,
  fontFiles: readonly string[]
): Promise<Files> {
  const wanted = documents.filter(({name}) => sentOut.includes(name))
  const drawn = [...new Set(wanted.flatMap(figuresIn))]
  // Asked for at once: the library draws on as many threads as there are.
  const bitmaps = await Promise.all(
    drawn.flatMap((name) => {
      const svg = pictures.get(name)
      if (svg === undefined) return []
      return [rasteriseSvg(svg, {fontFiles, scale: 2.5}).then((bitmap) => [name, bitmap] as const)]
    })
  )
  const input = {...setting, pictures, bitmaps: new Map(bitmaps)}
  const files: [string, Uint8Array][] = []
  for (const document of wanted) files.push([`${document.name}.docx`, await docx({...input, document})])
  return files
}

/** Drawings as files of their own. */
export function figureFiles(drawn: Pictures): Files {
  return [...drawn].map(([name, svg]) => [`figures/${name}.svg`, svg])
}

/** Photographs, tables, references, and the numbers behind the figures as files of their own. */
export function dataFiles(
  {documents, pictures, tables, cited}: ComposedReport,
  figures: readonly Figure[]
): Files {
  const shown = new Set(documents.flatMap(({tree}) => picturesIn(tree)))
  return [
    ...pictures.flatMap((picture): Files => {
      return 'bytes' in picture && shown.has(encodeURI(picture.path)) ? [[picture.path, picture.bytes]] : []
    }),
    ...figures.map(({name, data}) => [`figures/${name}.csv`, figureCsv(data)] as const),
    ...tables.map((table) => [`tables/${fileName(table.name)}.csv`, tableCsv(table)] as const),
    ['references.bib', bibtex(cited)],
    ['references.csl.json', json(cited)]
  ]
}

function figuresIn({tree}: Document): readonly string[] {
  return tree.children.flatMap((node) => (node.type === 'figureBlock' ? [node.figure.name] : []))
}
