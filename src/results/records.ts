import {tableNames} from '../model/columns.ts'
import type {Finding, Severity} from '../model/finding.ts'
import type {RecordsResult} from '../model/results.ts'
import type {UsableStudy} from '../model/study.ts'
import {codeUnitOrder} from './code-unit-order.ts'
import {counted, words} from './counted.ts'
import {groupBy} from './group-by.ts'

/** The rule that sets aside a visit of which nothing says what became of the sample. */
const unrecordedCode = 'visit-without-catch-record'

const severities: readonly Severity[] = ['error', 'caution', 'note']

/** What became of every row, and what was found wrong. */
export function recordsResult({findings, balance, judgedOtherwise}: UsableStudy): RecordsResult {
  const tables = [...balance].sort((a, b) => tableNames.indexOf(a.table) - tableNames.indexOf(b.table))
  const rows = (label: string, value: number) => counted(label, value, words.rows)
  const all = (label: string, what: 'read' | 'used' | 'setAside') =>
    rows(
      label,
      tables.reduce((sum, table) => sum + table[what], 0)
    )
  const found = (label: string, of: readonly Finding[]) => counted(label, of.length, words.findings)
  const bySeverity = (severity: Severity) => findings.filter((finding) => finding.severity === severity)
  return {
    tables: tables.map(({table, file, readAs, read, used, setAside, byCode}) => ({
      table,
      file,
      readAs,
      read: rows(`Rows read, ${file}`, read),
      used: rows(`Rows used, ${file}`, used),
      setAside: rows(`Rows set aside, ${file}`, setAside),
      reasons: Object.entries(byCode)
        .sort(([a], [b]) => codeUnitOrder(a, b))
        .map(([code, count]) => ({code, rows: rows(`Rows set aside by ${code}, ${file}`, count)}))
    })),
    findings: {
      errors: found('Errors found', bySeverity('error')),
      cautions: found('Cautions', bySeverity('caution')),
      notes: found('Notes', bySeverity('note')),
      total: found('Findings', findings)
    },
    readRows: all('Rows read', 'read'),
    usedRows: all('Rows used', 'used'),
    setAsideRows: all('Rows set aside', 'setAside'),
    leftUnrecorded: counted(
      'Exposures set aside because nothing says what became of the sample',
      tables.find(({table}) => table === 'visits')?.byCode[unrecordedCode] ?? 0,
      words.exposures
    ),
    byCode: severities.flatMap((severity) => {
      return [...groupBy(bySeverity(severity), ({code}) => code)]
        .sort(([a], [b]) => codeUnitOrder(a, b))
        .map(([code, group]) => ({
          code,
          severity,
          findings: found(`Findings of ${code}`, group),
          summary: group.map(({why}) => why).sort(codeUnitOrder)[0]!
        }))
    }),
    judgedOtherwise: judgedOtherwise.map(({code, severity, reason, findings: told}) => ({
      code,
      severity,
      reason,
      findings: counted(`Findings of ${code}`, told, words.findings)
    }))
  }
}
