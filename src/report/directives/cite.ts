import type {RootContent} from 'mdast'
import {nearestName} from '../../model/nearest-name.ts'
import type {CitedWork} from '../document.ts'
import type {Directive, DirectiveCall} from './directive.ts'

/** `:cite[key]`, several keys separated by spaces: `(Chao & Jost 2012; Chao et al. 2014)`. */
export const cite: Directive = {
  name: 'cite',
  forms: ['text'],
  attributes: [],
  evaluate: (call) => {
    const works = citedWorks(call, false).flatMap((work, index) =>
      index === 0 ? work : [text('; '), ...work]
    )
    return [text('('), ...works, text(')')]
  }
}

/** `:cited[key]`: `Nelson & Clark (1973)`. */
export const cited: Directive = {
  name: 'cited',
  forms: ['text'],
  attributes: [],
  evaluate: (call) => {
    const works = citedWorks(call, true)
    const last = works.length - 1
    return works.flatMap((work, index) =>
      index === 0 ? work : [text(index === last ? ' and ' : ', '), ...work]
    )
  }
}

/** The places of the works named; their words come when all citations of the document are known. */
function citedWorks(call: DirectiveCall, inText: boolean): RootContent[][] {
  const keys = call.label.split(/\s+/).filter((key) => key !== '')
  if (keys.length === 0) return [call.problem(`${call.name} needs a key`)]
  const {works, citedWorks: all} = call.composition
  return keys.map((key) => {
    if (!works.has(key))
      return call.problem(`unknown reference '${key}'`, nearestName(key, [...works.keys()]))
    const node: CitedWork = {type: 'citedWork', key, children: []}
    all.push({node, inText})
    return [node]
  })
}

function text(value: string): RootContent {
  return {type: 'text', value}
}
