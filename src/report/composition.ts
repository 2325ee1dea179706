import type {Figure} from '../charts/chart.ts'
import type {Place} from '../model/place.ts'
import type {Results} from '../model/results.ts'
import type {CitedWork, CrossReference} from './document.ts'
import type {StudyPictures} from './study-picture.ts'
import type {ReportTable} from './table.ts'
import type {TemplateProblem} from './template-problem.ts'
import type {Work} from './work.ts'

/** What a document is made from, besides its template. */
export interface Material {
  readonly results: Results
  /** Every figure of the study by its full name, such as `rarefaction-carabidae`. */
  readonly figures: ReadonlyMap<string, Figure>
  /** Every table of the study by its full name. */
  readonly tables: ReadonlyMap<string, ReportTable>
  /** The works that can be cited. */
  readonly references: readonly Work[]
  /** The author's own Markdown by study-relative path. */
  readonly texts: ReadonlyMap<string, string>
  /** Pictures that texts and templates show. */
  readonly pictures?: StudyPictures
  /** Where study.yaml states a value, for faults that are not the template's. */
  readonly settingPlace?: (path: readonly (string | number)[]) => Place
}

/** One document in the making: its material, and what is known of it only when the whole template has been walked. */
export interface Composition {
  readonly material: Material
  readonly works: ReadonlyMap<string, Work>
  readonly problems: TemplateProblem[]
  /** Number and place of each figure and table, by id. */
  readonly placed: Map<string, number>
  /** Names under which the template asks for texts of the author's. */
  readonly authorPlaces: Set<string>
  /** 'Figure 2' in the text, to be worded once all numbers are known. */
  readonly crossReferences: {readonly node: CrossReference; readonly place: Place}[]
  /** Citations, to be worded once it is known which works need a letter after the year. */
  readonly citedWorks: {readonly node: CitedWork; readonly inText: boolean}[]
  /** Level of the last heading, so that an author's headings go below it. */
  headingDepth: number
}

export function newComposition(material: Material): Composition {
  return {
    material,
    works: new Map(material.references.map((work) => [work.id, work])),
    problems: [],
    placed: new Map(),
    authorPlaces: new Set(),
    crossReferences: [],
    citedWorks: [],
    headingDepth: 0
  }
}

/** Notes a problem once, though an `each` may meet it many times. */
export function addProblem(composition: Composition, problem: TemplateProblem): void {
  const known = composition.problems.some(
    ({place, message}) =>
      message === problem.message &&
      place.file === problem.place.file &&
      place.line === problem.place.line &&
      place.column === problem.place.column
  )
  if (!known) composition.problems.push(problem)
}
