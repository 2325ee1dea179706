import {nearestName} from '../../model/nearest-name.ts'
import {addProblem} from '../composition.ts'
import {lookUp} from '../scope.ts'
import type {Directive} from './directive.ts'
import {numberedName} from './numbered-name.ts'

/** `::author{place=introduction}`: the author's own Markdown that study.yaml names for this place; nothing where it names none. */
export const author: Directive = {
  name: 'author',
  forms: ['leaf'],
  attributes: ['place', 'of'],
  evaluate(call) {
    const {place} = call.attributes
    if (place === undefined) return call.problem('author needs place=...')
    const name = numberedName(call, place)
    if (name === undefined) return call.problem(`'${call.attributes.of}' is no id`)
    const {results, texts, settingPlace} = call.composition.material
    call.composition.authorPlaces.add(name)
    const found = lookUp({names: new Map(), root: {value: results, shape: undefined}}, 'stated.report.text')
    const files =
      found.status === 'found' && typeof found.value === 'object' && found.value !== null ? found.value : {}
    const file = Object.entries(files).find(([key]) => key === name)?.[1] as unknown
    if (typeof file !== 'string') return []
    const text = texts.get(file)
    if (text !== undefined) return call.include(file, text)
    const message = `study.yaml names '${file}' for ${name}, and there is no such file`
    const nearest = nearestName(
      file,
      [...texts.keys()].filter((path) => path.endsWith('.md'))
    )
    if (settingPlace === undefined) return call.problem(message, nearest)
    addProblem(call.composition, {
      place: settingPlace(['report', 'text', name]),
      message,
      ...(nearest === undefined ? {remedy: 'add the file, or take its name out'} : {nearest})
    })
    return []
  }
}
