import {charts} from './charts/index.ts'
import {checkStudy, type Unreadable} from './check-study.ts'
import {bibtex, docx, figureCsv, html, json, markdown, pageKind, tableCsv} from './formats/index.ts'
import type {Finding} from './model/finding.ts'
import {fileName} from './model/file-name.ts'
import {findingsFile} from './model/findings-file.ts'
import type {Results} from './model/results.ts'
import type {Outputs, StudySource} from './model/source.ts'
import type {UsableStudy} from './model/study.ts'
import {composeDocument} from './report/compose-document.ts'
import type {Document} from './report/document.ts'
import {documentPlan, type PlannedDocument} from './report/document-plan.ts'
import {tableDefinitions} from './report/tables/index.ts'
import {templateFindings} from './report/template-findings.ts'
import type {Work} from './report/work.ts'
import {computeResults} from './results/index.ts'
import {rasteriseSvg} from './svg/rasterise-svg.ts'
import {renderSvg} from './svg/render-svg.ts'

/** Text of everything in templates/ by its name there, and of the package itself what a report must name. */
export interface Assets {
  readonly templates: ReadonlyMap<string, string>
  /** Font files for pictures that must be bitmaps. */
  readonly fontFiles: readonly string[]
  readonly toolVersion: string
}

export interface BuildOptions {
  /** Kinds or names of the documents to make; all where absent. */
  readonly only?: readonly string[]
  /** Called before each stage, for progress on the terminal. */
  readonly onStage?: (stage: string) => void
}

export interface Report {
  readonly usable: UsableStudy
  /** Findings about the author's own texts and templates, found while the documents were put together. */
  readonly textFindings: readonly Finding[]
  readonly outputs: Outputs
}

/**
 *   StudySource --parse--> Study --rules--> Findings --+
 *                            |                         |
 *                            +----> results ----> Results --> charts, report --> formats --> Outputs
 */
export async function buildReport(source: StudySource, assets: Assets, options: BuildOptions = {}): Promise<Report | Unreadable> {
  const stage = options.onStage ?? (() => undefined)
  stage('Reading the study')
  const usable = await checkStudy(source)
  if ('unreadable' in usable) return usable

  stage('Computing')
  const results = computeResults(usable)

  stage('Drawing')
  const figures = charts.flatMap((chart) => chart.figures(results))
  const pictures = new Map<string, string>()
  for (const {name, title, alternative, spec} of figures) {
    if (spec !== undefined) pictures.set(name, await renderSvg({id: `figure-${name}`, spec, title, description: alternative}))
  }

  stage('Writing the documents')
  const templates = overlaid(assets.templates, usable.study.texts)
  const references = JSON.parse(templates.get('references.json') ?? '[]') as readonly Work[]
  const tables = tableDefinitions.flatMap((definition) => definition.tables({results, findings: usable.findings}))
  const plan = documentPlan(results)
  const wanted = plan.filter((planned) => isWanted(planned, options.only))
  const compose = (planned: Pick<PlannedDocument, 'name' | 'template' | 'scope'>) =>
    composeDocument({
      name: planned.name,
      template: {file: templateFile(planned.template, usable.study.texts), text: templates.get(planned.template) ?? ''},
      results,
      findings: usable.findings,
      figures: new Map(figures.map((figure) => [figure.name, figure])),
      tables: new Map(tables.map((table) => [table.name, {...table, name: fileName(table.name)}])),
      references,
      texts: usable.study.texts,
      scope: planned.scope
    })
  const links = wanted.map((planned) => ({
    name: planned.name,
    kind: pageKind(planned.name),
    title: planned.title,
    summary: planned.summary,
    href: `${planned.name}.html`,
    also: [
      ...(hasWordFile(planned) ? [{label: 'Word', href: `${planned.name}.docx`}] : []),
      {label: 'Markdown', href: `${planned.name}.md`}
    ]
  }))
  const composed = [...wanted.map(compose), compose({name: 'index', template: 'index.md', scope: {documents: links}})]
  const textFindings = templateFindings(composed.flatMap(({problems}) => problems))
  const {title = 'A pitfall-trap study', people = [], report: choices} = usable.study.settings
  const study = {title, season: results.season}
  const language = choices?.language ?? 'en-GB'

  stage('Laying out the pages')
  const outputs = new Map<string, string | Uint8Array>()
  for (const {document} of composed) {
    outputs.set(`${document.name}.html`, html({document, templates, pictures, documents: links, study, language}))
    if (document.name !== 'index') outputs.set(`${document.name}.md`, markdown(document))
  }
  stage('Writing the Word files')
  const inWord = new Set(wanted.filter(hasWordFile).map(({name}) => name))
  const bitmaps = new Map<string, Uint8Array>()
  for (const {document} of composed.filter((one) => inWord.has(one.document.name))) {
    for (const name of drawnIn(document)) {
      const picture = pictures.get(name)
      if (picture === undefined || bitmaps.has(name)) continue
      bitmaps.set(name, await rasteriseSvg(picture, {fontFiles: assets.fontFiles, scale: 2.5}))
    }
    const authors = people.map(({name}) => name)
    const dated = results.issued === undefined ? {} : {issued: results.issued}
    outputs.set(`${document.name}.docx`, await docx({document, pictures, bitmaps, study, language, authors, ...dated}))
  }

  stage('Writing the data')
  for (const figure of figures) {
    outputs.set(`figures/${figure.name}.csv`, figureCsv(figure.data))
    const picture = pictures.get(figure.name)
    if (picture !== undefined) outputs.set(`figures/${figure.name}.svg`, picture)
  }
  for (const table of tables) outputs.set(`tables/${fileName(table.name)}.csv`, tableCsv(table))
  const cited = citedWorks(composed.map(({document}) => document), references)
  outputs.set('references.bib', bibtex(cited))
  outputs.set('references.csl.json', json(cited))
  outputs.set('results.json', json(results))
  outputs.set('findings.json', json(findingsFile([...usable.findings, ...textFindings], usable.balance)))
  return {usable, textFindings, outputs: new Map([...outputs].sort(([a], [b]) => (a < b ? -1 : 1)))}
}

/** Study folder to results: what `verify` compares, without drawing or writing anything. */
export async function studyResults(source: StudySource): Promise<Results | Unreadable> {
  const usable = await checkStudy(source)
  return 'unreadable' in usable ? usable : computeResults(usable)
}

/** The chapter is commented on by a supervisor and the site report sent to an owner: both want it in Word. */
function hasWordFile({kind}: PlannedDocument): boolean {
  return kind === 'chapter' || kind === 'site'
}

function drawnIn(document: Document): readonly string[] {
  return document.tree.children.flatMap((node) => (node.type === 'figureBlock' ? [node.figure.name] : []))
}

function isWanted({kind, name}: PlannedDocument, only: readonly string[] | undefined): boolean {
  return only === undefined || only.includes(kind) || only.includes(name)
}

/** The package's templates with those of the study's own templates/ folder laid over them. */
function overlaid(templates: ReadonlyMap<string, string>, texts: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  const own = [...texts].flatMap(([path, text]) => {
    const name = /^templates\/(.+)$/.exec(path)?.[1]
    return name === undefined ? [] : [[name, text] as const]
  })
  return new Map([...templates, ...own])
}

function templateFile(template: string, texts: ReadonlyMap<string, string>): string {
  return texts.has(`templates/${template}`) ? `templates/${template}` : `pitfolio:${template}`
}

function citedWorks(documents: readonly Document[], references: readonly Work[]): readonly Work[] {
  const cited = new Set(documents.flatMap(({cited: keys}) => keys))
  return references.filter(({id}) => cited.has(id))
}
