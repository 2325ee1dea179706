import {asMeasure} from '../as-measure.ts'
import {formatMeasure} from '../format-measure.ts'
import {joinWords} from '../join-words.ts'
import {lookUp} from '../scope.ts'
import {type Directive, words} from './directive.ts'
import {statedWords} from './stated-words.ts'

/** `:list[path]`: `a, b and c`; `{of=label}` takes that part of each item. */
export const list: Directive = {
  name: 'list',
  forms: ['text'],
  attributes: ['of'],
  evaluate: (call) =>
    call.read(call.label, (value) => {
      if (!Array.isArray(value)) return call.problem(`'${call.label}' is no list`)
      const parts = (value as readonly unknown[]).map((item) => {
        const part = partOf(item, call.attributes.of)
        const measure = asMeasure(part)
        return measure ? formatMeasure(measure) : statedWords(part)
      })
      if (parts.includes(undefined))
        return call.problem(`'${call.label}' holds more than words; name a part with of=...`)
      return words(joinWords(parts.filter(Boolean), (separator) => separator).join(''))
    })
}

function partOf(item: unknown, path: string | undefined): unknown {
  if (path === undefined) return item
  const found = lookUp({names: new Map(), root: {value: item, shape: undefined}}, path)
  return found.status === 'found' ? found.value : undefined
}
