import type {Root} from 'mdast'
import type {Figure} from './charts/chart.ts'
import {pageKind, type ReportPage} from './formats/page-kind.ts'
import {fileName} from './model/file-name.ts'
import type {Finding} from './model/finding.ts'
import type {Results} from './model/results.ts'
import type {StudySource} from './model/source.ts'
import type {UsableStudy} from './model/study.ts'
import {readBytes} from './parse/read-bytes.ts'
import {composeDocument} from './report/compose-document.ts'
import type {Document} from './report/document.ts'
import {documentPlan, type PlannedDocument} from './report/document-plan.ts'
import {picturesNamed} from './report/pictures-named.ts'
import {isPicturePlace, largestPicture, type StudyPicture, studyPicture} from './report/study-picture.ts'
import type {ReportTable} from './report/table.ts'
import {tableDefinitions} from './report/tables/index.ts'
import {templateFindings} from './report/template-findings.ts'
import {templateSet} from './report/template-set.ts'
import {textsWithoutPlace} from './report/texts-without-place.ts'
import type {Work} from './report/work.ts'

export interface ComposeInput {
  readonly source: StudySource
  readonly usable: UsableStudy
  readonly results: Results
  readonly figures: readonly Figure[]
  /** What the text names as its software. */
  readonly toolVersion: string
  /** Text of the package's templates by name, and trees of those that need not be read again, by their texts. */
  readonly templates: ReadonlyMap<string, string>
  readonly templateTrees?: ReadonlyMap<string, Root> | undefined
  /** Kinds or names of the documents to make; all where absent. */
  readonly only?: readonly string[] | undefined
  /** Whether PDFs will be printed, so that pages name them. */
  readonly pdf?: boolean | undefined
}

/** The documents of a report, in no format yet, and what goes with them. */
export interface ComposedReport {
  /** The front page last. */
  readonly documents: readonly Document[]
  /** Names of those that are wanted in Word and on paper. */
  readonly sentOut: readonly string[]
  /** Whether the season record is among them. */
  readonly hasRecord: boolean
  readonly pages: readonly ReportPage[]
  readonly tables: readonly ReportTable[]
  /** Pictures of the study that texts or templates name. */
  readonly pictures: readonly StudyPicture[]
  /** Page shell and style sheet among them. */
  readonly templates: ReadonlyMap<string, string>
  readonly cited: readonly Work[]
  /** What is wrong with the author's own texts and templates. */
  readonly findings: readonly Finding[]
}

/** Templates and results to documents. */
export async function composeReport(input: ComposeInput): Promise<ComposedReport> {
  const {source, usable, results, figures, only, pdf = false} = input
  const {study, findings} = usable
  const language = study.settings.report?.language ?? 'en-GB'
  const templates = templateSet(input.templates, study.texts, language)
  const pictures = await readPictures(source, picturesNamed(study.texts))
  const references = JSON.parse(templates.texts.get('references.json') ?? '[]') as readonly Work[]
  const tables = tableDefinitions.flatMap((definition) =>
    definition.tables({results, findings, figures, works: references})
  )
  const material = {
    results,
    findings,
    figures: new Map(figures.map((figure) => [figure.name, figure])),
    tables: new Map(tables.map((table) => [table.name, {...table, name: fileName(table.name), language}])),
    references,
    texts: study.texts,
    pictures: {named: pictures, files: [...source.files.keys()].filter(isPicturePlace)},
    settingPlace: (path: readonly (string | number)[]) => study.settingPlace(path)
  }
  const compose = ({name, template, scope}: Pick<PlannedDocument, 'name' | 'template' | 'scope'>) => {
    const text = templates.texts.get(template) ?? ''
    const tree = input.templateTrees?.get(text)
    const file = templates.fileOf(template)
    return composeDocument({
      ...material,
      name,
      template: {file, text, tree},
      scope: {...scope, tool: {version: input.toolVersion}}
    })
  }
  const owners = new Map(study.sites.flatMap(({siteId, owner}) => (owner ? [[siteId, owner]] : [])))
  const planned = documentPlan(results, templates.own, owners).filter((one) => isWanted(one, only))
  const made = planned.map((one) => ({...compose(one), planned: one}))
  const pages = made.map(({planned: one, document}) => reportPage(one, document, pdf))
  const all = [...made, compose({name: 'index', template: 'index.md', scope: listed(pages)})]
  const asked = new Set(all.flatMap(({authorPlaces}) => [...authorPlaces]))
  const documents = all.map(({document}) => document)
  const cited = new Set(documents.flatMap(({cited: keys}) => keys))
  return {
    documents,
    sentOut: planned.filter(isSentOut).map(({name}) => name),
    hasRecord: planned.some(({kind}) => kind === 'season'),
    pages,
    tables,
    pictures: [...pictures.values()],
    templates: templates.texts,
    cited: references.filter(({id}) => cited.has(id)),
    findings: templateFindings([
      ...templates.problems,
      ...all.flatMap(({problems}) => problems),
      // A part of the report need not hold every text.
      ...(only === undefined ? textsWithoutPlace(study, asked) : [])
    ])
  }
}

function reportPage(planned: PlannedDocument, document: Document, pdf: boolean): ReportPage {
  const {name, summary} = planned
  return {
    name,
    kind: pageKind(name),
    // A template of the study's own says what it is in its first heading.
    title: planned.kind === 'own' ? document.title : planned.title,
    summary,
    href: `${name}.html`,
    also: [
      ...(isSentOut(planned) ? [{label: 'Word', href: `${name}.docx`}] : []),
      ...(isSentOut(planned) && pdf ? [{label: 'PDF', href: `${name}.pdf`}] : []),
      {label: 'Markdown', href: `${name}.md`}
    ]
  }
}

/** The chapter is commented on by a supervisor, the site report sent to an owner, and what a study adds of its own is
 * most often a letter: they are wanted in Word and on paper. */
function isSentOut({kind}: PlannedDocument): boolean {
  return kind === 'chapter' || kind === 'site' || kind === 'own'
}

/** What the front page lists: everything, and the reports for single sites apart. */
function listed(pages: readonly ReportPage[]) {
  return {
    documents: pages,
    mainDocuments: pages.filter(({kind}) => kind !== 'site'),
    siteReports: pages.filter(({kind}) => kind === 'site')
  }
}

function isWanted({kind, name}: PlannedDocument, only: readonly string[] | undefined): boolean {
  return only === undefined || only.includes(kind) || only.includes(name)
}

/** The pictures at those of the paths where there is one. */
async function readPictures(
  source: StudySource,
  paths: readonly string[]
): Promise<ReadonlyMap<string, StudyPicture>> {
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
  return named
}
