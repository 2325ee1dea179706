import {plainText} from '../plain-text.ts'
import {taxonName} from '../taxon-name.ts'
import type {Directive} from './directive.ts'

/** `:taxon[path]`: a scientific name, from a taxon or from the name itself; its rank is looked up among the taxa. */
export const taxon: Directive = {
  name: 'taxon',
  forms: ['text'],
  attributes: [],
  evaluate: (call) =>
    call.read(call.label, (value) => {
      const named = typeof value === 'object' && value !== null && 'taxon' in value ? value.taxon : value
      if (typeof named !== 'string') return call.problem(`'${call.label}' is no taxon`)
      const {taxa} = call.composition.material.results
      return taxonName(plainText(named), taxa.find((known) => known.taxon === named)?.rank)
    })
}
