import {formatPlace, type Place} from '../model/place.ts'

/** Something in a template, or in a text of the author's, that could not be done. The document stands all the same. */
export interface TemplateProblem {
  readonly place: Place
  /** What is wrong: lower case, no full stop. */
  readonly message: string
  /** The name that was probably meant. */
  readonly nearest?: string
  /** What it is about, where that is no name. */
  readonly kind?: 'picture'
  /** What to do about it, where that is not to correct a name. */
  readonly remedy?: string
}

/** `chapter.md:12:4: unknown path 'effort.nett'; did you mean 'net'?` */
export function formatProblem({place, message, nearest}: TemplateProblem): string {
  return `${formatPlace(place)}: ${message}${nearest === undefined ? '' : `; did you mean '${nearest}'?`}`
}
