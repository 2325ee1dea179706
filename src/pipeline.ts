import type {Root} from 'mdast'
import type {Figure} from './charts/chart.ts'
import {charts} from './charts/index.ts'
import {checkStudy, type Unreadable} from './check-study.ts'
import {bibtex, docx, figureCsv, html, json, markdown, pageKind, tableCsv} from './formats/index.ts'
import type {ShareDrawing} from './model/draw-picture.ts'
import {fileName} from './model/file-name.ts'
import type {Finding} from './model/finding.ts'
import {findingsFile} from './model/findings-file.ts'
import type {Results} from './model/results.ts'
import type {Outputs, StudySource} from './model/source.ts'
import type {SplitWork} from './model/split-work.ts'
import type {UsableStudy} from './model/study.ts'
import {readBytes} from './parse/read-bytes.ts'
import {composeDocument} from './report/compose-document.ts'
import type {Document} from './report/document.ts'
import {documentPlan, type PlannedDocument} from './report/document-plan.ts'
import {picturesIn, picturesNamed} from './report/pictures-named.ts'
import {
  dataAddress,
  isPicturePlace,
  largestPicture,
  type StudyPicture,
  type StudyPictures,
  studyPicture
} from './report/study-picture.ts'
import {tableDefinitions} from './report/tables/index.ts'
import {templateFindings} from './report/template-findings.ts'
import {templateSet} from './report/template-set.ts'
import {textsWithoutPlace} from './report/texts-without-place.ts'
import type {Work} from './report/work.ts'
import {computeResults} from './results/index.ts'
import {splitRunner} from './results/replicates.ts'
import {rasteriseSvg} from './svg/rasterise-svg.ts'
import {renderSvg} from './svg/render-svg.ts'

/** Text of everything in templates/ by its name there, and of the package itself what a report must name. */
export interface Assets {
  readonly templates: ReadonlyMap<string, string>
  /** Trees of templates that need not be read again, by their texts. */
  readonly templateTrees?: ReadonlyMap<string, Root>
  /** What every finding means, as Markdown: goes beside the season record. */
  readonly rulesPage: string
  /** Font files for pictures that must be bitmaps. */
  readonly fontFiles: readonly string[]
  readonly toolVersion: string
}

export interface BuildOptions {
  /** Kinds or names of the documents to make; all where absent. */
  readonly only?: readonly string[]
  /** Whether PDFs will be printed of `toPrint`, so that pages name them. */
  readonly pdf?: boolean
  /** Who shares out the bootstrap among threads; here and now where absent. Never makes a difference to a number. */
  readonly split?: SplitWork
  /** Who draws the pictures; here and now where absent. Never makes a difference to a byte. */
  readonly draw?: ShareDrawing
  /** Called before each stage, for progress on the terminal. */
  readonly onStage?: (stage: string) => void
}

export interface Report {
  readonly usable: UsableStudy
  /** Findings about the author's own texts and templates, found while the documents were put together. */
  readonly textFindings: readonly Finding[]
  readonly outputs: Outputs
  /** Pages that are worth printing to PDF, among the outputs. */
  readonly toPrint?: readonly string[]
}

/**
 *   StudySource --parse--> Study --rules--> Findings --+
 *                            |                         |
 *                            +----> results ----> Results --> charts, report --> formats --> Outputs
 */
export async function buildReport(
  source: StudySource,
  assets: Assets,
  options: BuildOptions = {}
): Promise<Report | Unreadable> {
  const stage = options.onStage ?? (() => undefined)
  stage('Reading the study')
  const usable = await checkStudy(source)
  if ('unreadable' in usable) return usable

  stage('Computing')
  const results = computeResults(usable, options.split && splitRunner(options.split))

  stage('Drawing')
  const figures = charts.flatMap((chart) => chart.figures(results))
  const drawing = drawAll(figures, options.draw)
  // With a thread that draws, the documents are put together meanwhile; a fault is told when the pictures are wanted.
  drawing.catch(() => undefined)
  if (options.draw === undefined) await drawing

  stage('Writing the documents')
  const {study: read} = usable
  const {title = 'A pitfall-trap study', people = [], report: choices} = read.settings
  const language = choices?.language ?? 'en-GB'
  const templates = templateSet(assets.templates, read.texts, language)
  const pictured = await readPictures(source, picturesNamed(read.texts))
  const references = JSON.parse(templates.texts.get('references.json') ?? '[]') as readonly Work[]
  const tables = tableDefinitions.flatMap((definition) =>
    definition.tables({results, findings: usable.findings, figures, works: references})
  )
  const plan = documentPlan(results, templates.own)
  const wanted = plan.filter((planned) => isWanted(planned, options.only))
  const material = {
    results,
    findings: usable.findings,
    figures: new Map(figures.map((figure) => [figure.name, figure])),
    tables: new Map(tables.map((table) => [table.name, {...table, name: fileName(table.name), language}])),
    references,
    texts: read.texts,
    pictures: pictured,
    settingPlace: (path: readonly (string | number)[]) => read.settingPlace(path)
  }
  const compose = ({name, template, scope}: Pick<PlannedDocument, 'name' | 'template' | 'scope'>) => {
    const text = templates.texts.get(template) ?? ''
    const tree = assets.templateTrees?.get(text)
    return composeDocument({
      ...material,
      name,
      template: {file: templates.fileOf(template), text, tree},
      scope
    })
  }
  const made = wanted.map((planned) => ({planned, ...compose(planned)}))
  const links = made.map(({planned, document}) => ({
    name: planned.name,
    kind: pageKind(planned.name),
    // A template of the study's own says what it is in its first heading.
    title: planned.kind === 'own' ? document.title : planned.title,
    summary: planned.summary,
    href: `${planned.name}.html`,
    also: [
      ...(isSentOut(planned) ? [{label: 'Word', href: `${planned.name}.docx`}] : []),
      ...(isSentOut(planned) && options.pdf === true ? [{label: 'PDF', href: `${planned.name}.pdf`}] : []),
      {label: 'Markdown', href: `${planned.name}.md`}
    ]
  }))
  const composed = [...made, compose({name: 'index', template: 'index.md', scope: listed(links)})]
  const asked = new Set(composed.flatMap(({authorPlaces}) => [...authorPlaces]))
  const textFindings = templateFindings([
    ...templates.problems,
    ...composed.flatMap(({problems}) => problems),
    // A part of the report need not hold every text.
    ...(options.only === undefined ? textsWithoutPlace(read, asked) : [])
  ])
  const study = {title, season: results.season}
  const photos = new Map<string, string>()
  for (const picture of pictured.named.values()) {
    if ('bytes' in picture) photos.set(encodeURI(picture.path), dataAddress(picture.type, picture.bytes))
  }

  stage('Laying out the pages')
  const outputs = new Map<string, string | Uint8Array>()
  for (const {document} of composed)
    if (document.name !== 'index') outputs.set(`${document.name}.md`, markdown(document))
  const pictures = await drawing
  for (const {document} of composed) {
    outputs.set(
      `${document.name}.html`,
      html({document, templates: templates.texts, pictures, photos, documents: links, study, language})
    )
  }
  stage('Writing the Word files')
  const inWord = new Set(wanted.filter(isSentOut).map(({name}) => name))
  const bitmaps = new Map<string, Uint8Array>()
  for (const {document} of composed.filter((one) => inWord.has(one.document.name))) {
    for (const name of drawnIn(document)) {
      const picture = pictures.get(name)
      if (picture === undefined || bitmaps.has(name)) continue
      bitmaps.set(name, await rasteriseSvg(picture, {fontFiles: assets.fontFiles, scale: 2.5}))
    }
    const authors = people.map(({name}) => name)
    const dated = results.issued === undefined ? {} : {issued: results.issued}
    outputs.set(
      `${document.name}.docx`,
      await docx({document, pictures, bitmaps, photos, study, language, authors, ...dated})
    )
  }

  stage('Writing the data')
  const shown = new Set(composed.flatMap(({document}) => picturesIn(document.tree)))
  for (const picture of pictured.named.values()) {
    if ('bytes' in picture && shown.has(encodeURI(picture.path))) outputs.set(picture.path, picture.bytes)
  }
  for (const figure of figures) {
    outputs.set(`figures/${figure.name}.csv`, figureCsv(figure.data))
    const picture = pictures.get(figure.name)
    if (picture !== undefined) outputs.set(`figures/${figure.name}.svg`, picture)
  }
  for (const table of tables) outputs.set(`tables/${fileName(table.name)}.csv`, tableCsv(table))
  const cited = citedWorks(
    composed.map(({document}) => document),
    references
  )
  if (wanted.some(({kind}) => kind === 'season')) outputs.set('rules.md', assets.rulesPage)
  outputs.set('references.bib', bibtex(cited))
  outputs.set('references.csl.json', json(cited))
  outputs.set('results.json', json(results))
  outputs.set('findings.json', json(findingsFile([...usable.findings, ...textFindings], usable.balance)))
  return {
    usable,
    textFindings,
    outputs: new Map([...outputs].sort(([a], [b]) => (a < b ? -1 : 1))),
    toPrint: wanted.filter(isSentOut).map(({name}) => `${name}.html`)
  }
}

/** The pictures by name, all asked for at once. */
async function drawAll(
  figures: readonly Figure[],
  share: BuildOptions['draw']
): Promise<Map<string, string>> {
  const drawn = figures.flatMap(({name, title, alternative, spec}) => {
    if (spec === undefined) return []
    const request = {id: `figure-${name}`, spec, title, description: alternative}
    const svg = share === undefined ? renderSvg(request) : share(request, renderSvg)
    return [svg.then((text) => [name, text] as const)]
  })
  return new Map(await Promise.all(drawn))
}

/** Study folder to results: what `verify` compares, without drawing or writing anything. */
export async function studyResults(source: StudySource): Promise<Results | Unreadable> {
  const usable = await checkStudy(source)
  return 'unreadable' in usable ? usable : computeResults(usable)
}

/** The chapter is commented on by a supervisor, the site report sent to an owner, and what a study adds of its own is
 * most often a letter: they are wanted in Word and on paper. */
function isSentOut({kind}: PlannedDocument): boolean {
  return kind === 'chapter' || kind === 'site' || kind === 'own'
}

/** What the front page lists: everything, and the reports for single sites apart. */
function listed<Link extends {readonly kind: string}>(links: readonly Link[]) {
  return {
    documents: links,
    mainDocuments: links.filter(({kind}) => kind !== 'site'),
    siteReports: links.filter(({kind}) => kind === 'site')
  }
}

function drawnIn(document: Document): readonly string[] {
  return document.tree.children.flatMap((node) => (node.type === 'figureBlock' ? [node.figure.name] : []))
}

function isWanted({kind, name}: PlannedDocument, only: readonly string[] | undefined): boolean {
  return only === undefined || only.includes(kind) || only.includes(name)
}

/** The pictures at those of the paths where there is one. */
async function readPictures(source: StudySource, paths: readonly string[]): Promise<StudyPictures> {
  const named = new Map<string, StudyPicture>()
  for (const path of paths) {
    const file = source.files.get(path)
    if (file === undefined || !isPicturePlace(path)) continue
    const isLarge = file.size > largestPicture.bytes
    named.set(
      path,
      isLarge
        ? {unusable: `is larger than ${largestPicture.words}`}
        : studyPicture(path, await readBytes(source, path))
    )
  }
  return {named, files: [...source.files.keys()].filter(isPicturePlace)}
}

function citedWorks(documents: readonly Document[], references: readonly Work[]): readonly Work[] {
  const cited = new Set(documents.flatMap(({cited: keys}) => keys))
  return references.filter(({id}) => cited.has(id))
}
