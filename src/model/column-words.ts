/** The words that a column of a fixed list may hold. */

export const conditionWords = [
  'intact',
  'diluted',
  'overflowed',
  'dry',
  'raised',
  'disturbed',
  'blocked',
  'spilled',
  'missing',
  'closed'
] as const
export type ConditionWord = (typeof conditionWords)[number]

export const sampleWords = ['sorted', 'empty', 'unsorted', 'lost'] as const
export type SampleWord = (typeof sampleWords)[number]

export const sexWords = ['female', 'male', 'undetermined'] as const
export const lifeStageWords = ['adult', 'larva', 'juvenile', 'pupa', 'egg', 'nymph', 'subadult'] as const
export const rimWords = ['flush', 'sunken', 'proud'] as const
export const coordinatesShownWords = ['exact', '0.001', '0.01', '0.1', 'none'] as const
