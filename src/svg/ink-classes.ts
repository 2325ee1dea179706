import type {Properties} from 'hast'
import {type InkTone, inkTones} from '../model/ink.ts'

const tones = Object.keys(inkTones) as InkTone[]
const toneOf = new Map<unknown, InkTone>(tones.map((tone) => [inkTones[tone].light, tone]))

/**
 * Adds a class (`ink-fill`, `rule-stroke` and so on) where a fill or a stroke is one of the ink tones. The colour
 * itself stays as an attribute: a file of its own, a word processor or a drawing program, few of which know CSS
 * variables, show the tones for white paper; a page recolours by the classes.
 */
export function inkClasses(properties: Properties): Properties {
  const classes = (['fill', 'stroke'] as const).flatMap((paint) => {
    const tone = toneOf.get(properties[paint])
    return tone === undefined ? [] : [`${tone}-${paint}`]
  })
  return classes.length === 0 ? properties : {...properties, className: classes}
}

/**
 * Style rules for a page with charts in it: they take the tones from the page's variables `--ink`, `--muted`,
 * `--rule` and `--paper`, so that a page in dark mode has dark charts.
 */
export const inkRules = tones
  .flatMap((tone) =>
    ['fill', 'stroke'].map(
      (paint) => `.${tone}-${paint} { ${paint}: var(--${tone}, ${inkTones[tone].light}) }`
    )
  )
  .join('\n')
