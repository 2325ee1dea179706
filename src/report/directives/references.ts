import type {Directive} from './directive.ts'

/** `::references`: where the list of the works cited stands. */
export const references: Directive = {
  name: 'references',
  forms: ['leaf'],
  attributes: [],
  evaluate: () => [{type: 'referenceList', children: []}]
}
