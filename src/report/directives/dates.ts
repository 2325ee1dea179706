import {formatDates, statedLanguage} from '../../model/format-date.ts'
import {type Directive, words} from './directive.ts'

/** `:dates[path]{to=path}`: `14 to 28 June 2026`. */
export const dates: Directive = {
  name: 'dates',
  forms: ['text'],
  attributes: ['to'],
  evaluate(call) {
    const end = call.attributes.to
    if (end === undefined) return call.problem('dates needs to=...')
    return call.read(call.label, (from) =>
      call.read(end, (to) => {
        const language = statedLanguage(call.composition.material.results.stated)
        const range =
          typeof from === 'string' && typeof to === 'string' ? formatDates(from, to, language) : undefined
        return range === undefined ? call.problem(`'${call.label}' or '${end}' is no date`) : words(range)
      })
    )
  }
}
