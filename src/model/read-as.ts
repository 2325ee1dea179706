import type {SourceTable} from './study.ts'

const encodings: Readonly<Record<string, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16 LE',
  'utf-16be': 'UTF-16 BE',
  'windows-1252': 'Windows-1252'
}

const delimiters: Readonly<Record<string, string>> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'vertical bar'
}

/** How a file was read, in words: `UTF-8, comma`. What was decided by evidence must be told, to be seen when it is wrong. */
export function readAs({encoding, delimiter}: Pick<SourceTable, 'encoding' | 'delimiter'>): string {
  return `${encodings[encoding] ?? encoding}, ${delimiters[delimiter] ?? delimiter}`
}
