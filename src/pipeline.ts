import type {Root} from 'mdast'
import type {Figure} from './charts/chart.ts'
import {charts} from './charts/index.ts'
import {checkStudy, type Unreadable} from './check-study.ts'
import {composeReport} from './compose-report.ts'
import {json, type Pictures} from './formats/index.ts'
import type {ShareDrawing} from './model/draw-picture.ts'
import type {Finding} from './model/finding.ts'
import {findingsFile} from './model/findings-file.ts'
import type {Results} from './model/results.ts'
import type {Outputs, StudySource} from './model/source.ts'
import type {SplitWork} from './model/split-work.ts'
import type {UsableStudy} from './model/study.ts'
import {studyPicture} from './report/study-picture.ts'
import {renderSvg} from './svg/render-svg.ts'
import {
  dataFiles,
  type Files,
  figureFiles,
  markdownFiles,
  pageFiles,
  settingOf,
  wordFiles
} from './write-formats.ts'

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

  const {computeResults, splitRunner} = await loadResults()

  stage('Computing')
  const results = computeResults(usable, options.split && splitRunner(options.split))

  stage('Drawing')
  const {figures, drawing} = startDrawing(results, options.draw)
  // With a thread that draws, the documents are put together meanwhile; a fault is told when the pictures are wanted.
  drawing.catch(() => undefined)
  if (options.draw === undefined) await drawing

  stage('Writing the documents')
  const {templates, templateTrees, fontFiles, toolVersion} = assets
  const {only, pdf} = options
  const composed = await composeReport({
    source,
    usable,
    results,
    figures,
    toolVersion,
    templates,
    templateTrees,
    only,
    pdf
  })

  stage('Writing the data')
  const textFindings = composed.findings
  const findings = findingsFile([...usable.findings, ...textFindings], usable.balance)
  const data: Files = [
    ...dataFiles(composed, figures),
    ...(composed.hasRecord ? ([['rules.md', assets.rulesPage]] as const) : []),
    ['results.json', json(results)],
    ['findings.json', json(findings)]
  ]

  stage('Laying out the pages')
  const setting = settingOf(usable.study.settings, results, composed)
  const texts = markdownFiles(composed)
  const pagesWith = pageFiles(composed, setting)
  // Whatever needs no pictures is done by now.
  const pictures = await drawing
  const pages = pagesWith(pictures)

  stage('Writing the Word files')
  const inWord = await wordFiles(composed, setting, pictures, fontFiles)
  const outputs: Files = [...data, ...figureFiles(pictures), ...texts, ...pages, ...inWord]
  return {
    usable,
    textFindings,
    outputs: new Map([...outputs].sort(([a], [b]) => (a < b ? -1 : 1))),
    toPrint: composed.sentOut.map((name) => `${name}.html`)
  }
}

/** The figures, and their pictures by name. Each is asked for as soon as it is known what it shows. */
function startDrawing(
  results: Results,
  share: ShareDrawing = (request, inline) => inline(request)
): {figures: readonly Figure[]; drawing: Promise<Pictures>} {
  const asked: Promise<readonly [string, string]>[] = []
  const figures = charts.flatMap((chart) => {
    const made = chart.figures(results)
    for (const {name, title, alternative, spec} of made) {
      if (spec === undefined) continue
      const request = {id: `figure-${name}`, spec, title, description: alternative}
      const picture = share(request, renderSvg).then((svg) => [name, svg] as const)
      // A fault is told when the pictures are wanted; until then it is nobody's, also where a chart fails meanwhile.
      picture.catch(() => undefined)
      asked.push(picture)
    }
    return made
  })
  return {figures, drawing: Promise.all(asked).then((drawn) => new Map(drawn))}
}

/** Study folder to results: what `verify` compares, without drawing or writing anything. */
export async function studyResults(source: StudySource): Promise<Results | Unreadable> {
  const usable = await checkStudy(source)
  return 'unreadable' in usable ? usable : (await loadResults()).computeResults(usable)
}

/** The statistics and their libraries: much code, and a study that cannot be read needs none of it. */
function loadResults(): Promise<typeof import('./results/index.ts')> {
  return import('./results/index.ts')
}

/** A picture of a study as documents show it, without what a camera writes beside it; other files as they are. */
export function pictureForOthers(path: string, bytes: Uint8Array): Uint8Array {
  const picture = studyPicture(path, bytes)
  return 'unusable' in picture ? bytes : picture.bytes
}
