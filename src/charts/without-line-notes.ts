import {listWords} from '../model/list-words.ts'

/** A line below the picture that names the habitats without a curve. */
export function withoutLineNotes(habitats: readonly {readonly label: string}[]): readonly string[] {
  const names = habitats.map(({label}) => label)
  return names.length === 0 ? [] : [`No line, for want of catch: ${listWords(names)}.`]
}
