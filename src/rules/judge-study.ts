import type {TableName} from '../model/column.ts'
import {tableNames} from '../model/columns.ts'
import type {Finding, JudgedOtherwise, RowBalance, RowReference, Severity} from '../model/finding.ts'
import {formatPlace} from '../model/place.ts'
import {readAs} from '../model/read-as.ts'
import type {Study, UsableStudy} from '../model/study.ts'
import {duplicateCatchRow} from './duplicate-catch-row.ts'
import {rules} from './index.ts'
import type {Found, Rule} from './rule.ts'
import {studyIndex} from './study-index.ts'

/** The rule that sets a row aside which repeats another: its animals are in the study already. */
const repeatedRow = duplicateCatchRow.code

/** Run every rule over a study: the findings, and the study without the rows that they set aside. */
export function judgeStudy(study: Study): UsableStudy {
  const aside = new Map<TableName, Map<number, string>>()
  const index = studyIndex(study, aside, new Map((rules as readonly Rule[]).map((rule) => [rule.code, rule])))
  const findings: Finding[] = []
  const judgedOtherwise: JudgedOtherwise[] = []
  const untyped = new Set(study.problems.filter(({setsAside}) => setsAside).map(({place}) => place))
  for (const rule of rules as readonly Rule[]) {
    const judged = rule.settled ? undefined : study.settings.rules?.[rule.code]
    let told = 0
    for (const found of rule.check(study, index)) {
      told += 1
      const severity = severityOf(rule, found, judged?.severity)
      // Only errors set rows aside; a row that could not be typed has no values to use, whatever it is called.
      const setsAside = severity === 'error' || untyped.has(found.place) ? found.setsAside : undefined
      for (const {table, row} of setsAside ?? []) noteAside(aside, table, row, rule.code)
      if (judged?.severity !== 'silent' || setsAside !== undefined)
        findings.push(stamp(rule, found, severity, setsAside))
    }
    if (judged !== undefined)
      judgedOtherwise.push({
        code: rule.code,
        severity: judged.severity,
        reason: judged.reason,
        findings: told
      })
  }
  const catchAside = aside.get('catch') ?? new Map<number, string>()
  return {
    study: withoutRowsAside(study, aside),
    findings: sorted(findings),
    balance: balanceOf(study, aside),
    judgedOtherwise,
    catchSetAside: study.catch.filter(({row}) => catchAside.has(row) && catchAside.get(row) !== repeatedRow),
    catchRepeated: [...catchAside.values()].filter((code) => code === repeatedRow).length
  }
}

function severityOf(rule: Rule, found: Found, judged: Severity | 'silent' | undefined): Severity {
  if (judged !== undefined && judged !== 'silent') return judged
  return judged === 'silent' ? 'note' : (found.severity ?? rule.severity)
}

function stamp(
  rule: Rule,
  found: Found,
  severity: Severity,
  setsAside: readonly RowReference[] | undefined
): Finding {
  const {place, message, remedy = rule.remedy, cell, related} = found
  return {
    code: rule.code,
    severity,
    place,
    message,
    why: rule.why,
    remedy,
    ...(cell !== undefined && {cell}),
    ...(related !== undefined && {related}),
    ...(setsAside !== undefined && {setsAside})
  }
}

function noteAside(
  aside: Map<TableName, Map<number, string>>,
  table: TableName,
  row: number,
  code: string
): void {
  const rows = aside.get(table) ?? new Map<number, string>()
  aside.set(table, rows)
  if (!rows.has(row)) rows.set(row, code)
}

function withoutRowsAside(study: Study, aside: ReadonlyMap<TableName, ReadonlyMap<number, string>>): Study {
  const kept = <Row extends {readonly row: number}>(
    table: TableName,
    rows: readonly Row[]
  ): readonly Row[] => {
    const gone = aside.get(table)
    return gone === undefined ? rows : rows.filter(({row}) => !gone.has(row))
  }
  return {
    ...study,
    sites: kept('sites', study.sites),
    traps: kept('traps', study.traps),
    exposures: kept('visits', study.exposures),
    catch: kept('catch', study.catch),
    taxa: kept('taxa', study.taxa),
    weather: kept('weather', study.weather)
  }
}

function balanceOf(
  study: Study,
  aside: ReadonlyMap<TableName, ReadonlyMap<number, string>>
): readonly RowBalance[] {
  return tableNames.flatMap((table) => {
    const source = study.tables[table]
    if (source === undefined) return []
    const rows = aside.get(table) ?? new Map<number, string>()
    const byCode: Record<string, number> = {}
    for (const code of [...rows.values()].sort()) byCode[code] = (byCode[code] ?? 0) + 1
    return [
      {
        table,
        file: source.file,
        readAs: readAs(source),
        read: source.rowsRead,
        used: source.rowsRead - rows.size,
        setAside: rows.size,
        byCode
      }
    ]
  })
}

/** By place, then code: the order in which a person mends a folder. */
function sorted(findings: readonly Finding[]): readonly Finding[] {
  return findings
    .map((finding) => ({finding, key: placeKey(finding)}))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .map(({finding}) => finding)
}

function placeKey({place, code, message}: Finding): string {
  const padded = (value: number | undefined): string => String(value ?? 0).padStart(9, '0')
  return `${place.file}\u0000${padded(place.line)}\u0000${padded(place.column)}\u0000${code}\u0000${message}\u0000${formatPlace(place)}`
}
