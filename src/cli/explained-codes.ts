import {rules} from '../rules/index.ts'
import type {Rule} from '../rules/rule.ts'

/** What is said about a code, whether a rule stands behind it or another part of the way. */
export type Explained = Pick<Rule, 'code' | 'severity' | 'summary' | 'why' | 'remedy' | 'source' | 'examples'>

const source = "the study folder's own logic"

/** Reasons why nothing can be said about a folder. No rule can find them: rules need a study that was read. */
export const readerReasons: readonly Explained[] = [
  {
    code: 'missing-table',
    severity: 'error',
    summary: 'study.yaml or a table that every study needs is not there, is empty, or is no text',
    why: 'Without it there is nothing to report on, so no report is made.',
    remedy: 'add the file, or name yours under `files:` in study.yaml',
    source,
    examples: []
  },
  {
    code: 'missing-column',
    severity: 'error',
    summary: 'a table lacks a column that it cannot do without',
    why: 'No row of the table can be used without it, so no report is made.',
    remedy: 'rename the header, or name yours under `columns:` in study.yaml',
    source,
    examples: []
  }
]

/** What only shows when the documents are put together. */
const documentReasons: readonly Explained[] = [
  {
    code: 'unknown-name-in-text',
    severity: 'caution',
    summary: 'a text or template calls up a number, table or figure that is not there',
    why: 'The sentence cannot be finished, so the document shows a mark in its place.',
    remedy: 'correct the name; the season record lists every name that can be called',
    source,
    examples: []
  },
  {
    code: 'picture-not-shown',
    severity: 'caution',
    summary:
      'a picture that a text names is not there, cannot be shown, or has no words for those who cannot see it',
    why: 'Some readers, or all of them, will miss what the picture shows.',
    remedy: 'put a PNG, JPEG, GIF, WebP or plain SVG into photos/ and say between the brackets what it shows',
    source: 'W3C (2024) Web Content Accessibility Guidelines 2.2, success criterion 1.1.1',
    examples: []
  }
]

/** Every code that a finding can bear, in the order in which a person mends a folder. */
export const explainedCodes: readonly Explained[] = [
  ...readerReasons,
  ...(rules as readonly Rule[]),
  ...documentReasons
]
