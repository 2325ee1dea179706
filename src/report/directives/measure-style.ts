import type {MeasureStyle} from '../format-measure.ts'
import type {DirectiveCall} from './directive.ts'

/** The wishes `{words=yes}`, `{start=yes}` and `{whole=yes}` of a directive that prints a measure. */
export function measureStyle({attributes}: DirectiveCall): MeasureStyle {
  return {
    words: attributes.words === 'yes',
    start: attributes.start === 'yes',
    whole: attributes.whole === 'yes'
  }
}
