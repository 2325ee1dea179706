import {AlignmentType, type ILevelsOptions, type INumberingOptions, LevelFormat} from 'docx'

/** Space from the margin to the words of an item, for each level, in twentieths of a point. */
const step = 360
const deepest = 8

const bullets = ['•', '–', '·']
const numbers = [LevelFormat.DECIMAL, LevelFormat.LOWER_LETTER, LevelFormat.LOWER_ROMAN]

/** How items are marked, by the kind of list. A list that starts at another number than 1 has a kind of its own. */
export function docxNumbering(starts: readonly number[]): INumberingOptions {
  return {
    config: [
      {
        reference: 'bullets',
        levels: levels(
          () => ({format: LevelFormat.BULLET}),
          (level) => bullets[level % 3]!
        )
      },
      ...[...new Set([1, ...starts])].map((start) => ({
        reference: numbersFrom(start),
        levels: levels(
          (level) => ({format: numbers[level % 3]!, start: level === 0 ? start : 1}),
          (level) => `%${level + 1}.`
        )
      }))
    ]
  }
}

export function numbersFrom(start: number): string {
  return `numbers-from-${start}`
}

/** Level that an item this deep in other lists is set at. */
export function levelOf(depth: number): number {
  return Math.min(depth, deepest)
}

/** Indent of what else stands in an item, below its first line. */
export function indentOf(depth: number): number {
  return step * (levelOf(depth) + 1)
}

function levels(
  kind: (level: number) => Pick<ILevelsOptions, 'format' | 'start'>,
  text: (level: number) => string
): ILevelsOptions[] {
  return Array.from({length: deepest + 1}, (_, level) => ({
    level,
    ...kind(level),
    text: text(level),
    alignment: AlignmentType.LEFT,
    style: {paragraph: {indent: {left: indentOf(level), hanging: step}}}
  }))
}
