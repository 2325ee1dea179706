import type {RootContent} from 'mdast'
import type {Measure} from '../../model/quantity.ts'
import type {Composition} from '../composition.ts'
import type {LookUp, Scope} from '../scope.ts'

/** How a directive is written: `:name[...]` in a sentence, `::name` on a line, `:::name` round a block. */
export type DirectiveForm = 'text' | 'leaf' | 'container'

/** One word of the template language. */
export interface Directive {
  readonly name: string
  readonly forms: readonly DirectiveForm[]
  /** The attributes that it understands. */
  readonly attributes: readonly string[]
  /** What stands in its place in the document. */
  evaluate(call: DirectiveCall): RootContent[]
}

/** One use of a directive in a template, with what a handler may do about it. */
export interface DirectiveCall {
  readonly form: DirectiveForm
  readonly name: string
  /** Words between the brackets, as written. */
  readonly label: string
  readonly attributes: Readonly<Record<string, string>>
  readonly scope: Scope
  readonly composition: Composition
  readonly place: {readonly file: string; readonly line?: number; readonly column?: number}
  /** What the directive encloses, evaluated, under other names if given. */
  content(scope?: Scope): RootContent[]
  /** Evaluates Markdown of another file under the names of this place. */
  include(file: string, text: string): RootContent[]
  lookUp(path: string): LookUp
  /** Prints the value at a path; a problem where there is none. */
  read(path: string, print: (value: unknown) => RootContent[]): RootContent[]
  /** Prints the measure at a path; a problem where there is none. */
  readMeasure(path: string, print: (measure: Measure) => RootContent[]): RootContent[]
  /** Notes a problem, and gives the mark that a reader sees in its place. */
  problem(message: string, nearest?: string): RootContent[]
}

/** Phrasing that is one text; nothing for no words. */
export function words(value: string): RootContent[] {
  return value === '' ? [] : [{type: 'text', value}]
}
