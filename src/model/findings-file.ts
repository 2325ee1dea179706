import {z} from 'zod'
import {tableNames} from './columns.ts'
import type {Finding, RowBalance} from './finding.ts'

/**
 * findings.json, and what `check --json` prints: every finding, what became of every row, and the verdict. Fields
 * may be added; those that are here keep their meaning as long as formatVersion is 1.
 */
const table = z.enum(tableNames).meta({id: 'table'})
const rows = z.number().int().min(0)

const place = z
  .strictObject({
    file: z.string().describe('Path inside the study folder.'),
    line: z.number().int().min(1).optional().describe('Line of the file, from 1; the header is line 1.'),
    column: z.number().int().min(1).optional().describe('Column of the line in characters, from 1.')
  })
  .readonly()
  .meta({id: 'place'})

const finding = z
  .strictObject({
    code: z.string().describe('Name of the rule; `pitfolio explain` says more about it.'),
    severity: z.enum(['error', 'caution', 'note']),
    place,
    message: z.string().describe('What is wrong.'),
    why: z.string().describe('What happens to the report when this is ignored.'),
    remedy: z.string().describe('What to do about it.'),
    cell: z.string().optional().describe('The cell as it is written.'),
    related: z
      .array(z.strictObject({place, message: z.string()}).readonly())
      .readonly()
      .optional()
      .describe('Other places that belong to the finding.'),
    setsAside: z
      .array(z.strictObject({table, row: rows.describe('Data row of the file, from 0.')}).readonly())
      .readonly()
      .optional()
      .describe('Rows that the finding sets aside.')
  })
  .readonly()
  .meta({id: 'finding'})

const balance = z
  .strictObject({
    table,
    file: z.string(),
    readAs: z.string().describe('Encoding and separator that the file was read with.'),
    read: rows.describe('Data rows in the file: used and set aside together.'),
    used: rows,
    setAside: rows,
    byCode: z.record(z.string(), rows).describe('Rows set aside, by the rule that did it.')
  })
  .readonly()
  .meta({id: 'balance'})

export const findingsFileSchema = z.strictObject({
  format: z.literal('pitfolio-findings'),
  formatVersion: z.literal(1),
  findings: z.array(finding).readonly().describe('In the order of their places.'),
  balance: z.array(balance).readonly().describe('What became of the rows of each table.'),
  verdict: z.strictObject({
    outcome: z
      .enum(['clean', 'errors', 'unreadable'])
      .describe(
        'clean: no error, though there may be cautions; unreadable: no report can be made of this folder.'
      ),
    errors: rows,
    cautions: rows,
    notes: rows,
    rowsRead: rows,
    rowsSetAside: rows
  })
})

export type FindingsFile = z.infer<typeof findingsFileSchema>

/** Everything that was found, as the file says it. */
export function findingsFile(
  findings: readonly Finding[],
  balance: readonly RowBalance[],
  readable: 'readable' | 'unreadable' = 'readable'
): FindingsFile {
  const count = (severity: Finding['severity']): number =>
    findings.filter((found) => found.severity === severity).length
  const sum = (of: (rows: RowBalance) => number): number =>
    balance.reduce((total, rows) => total + of(rows), 0)
  const errors = count('error')
  return {
    format: 'pitfolio-findings',
    formatVersion: 1,
    findings,
    balance,
    verdict: {
      outcome: readable === 'unreadable' ? 'unreadable' : errors > 0 ? 'errors' : 'clean',
      errors,
      cautions: count('caution'),
      notes: count('note'),
      rowsRead: sum(({read}) => read),
      rowsSetAside: sum(({setAside}) => setAside)
    }
  }
}
