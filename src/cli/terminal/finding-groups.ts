import type {Finding, Severity} from '../../model/finding.ts'

/** Findings of one code and one weight. */
export interface FindingGroup {
  readonly code: string
  readonly severity: Severity
  readonly findings: readonly Finding[]
  /** What to do and why, where it is the same for all of them. */
  readonly remedy?: string
  readonly why?: string
}

const weights: readonly Severity[] = ['error', 'caution', 'note']

/** Groups with errors first, then cautions, then notes; within these in the given order of codes. */
export function findingGroups(
  findings: readonly Finding[],
  order: readonly string[]
): readonly FindingGroup[] {
  const groups = new Map<string, Finding[]>()
  for (const finding of findings) {
    const key = `${weights.indexOf(finding.severity)} ${finding.code}`
    const group = groups.get(key)
    if (group) group.push(finding)
    else groups.set(key, [finding])
  }
  const rank = (code: string): number => (order.includes(code) ? order.indexOf(code) : order.length)
  return [...groups.values()]
    .map(groupOf)
    .sort(
      (a, b) =>
        weights.indexOf(a.severity) - weights.indexOf(b.severity) ||
        rank(a.code) - rank(b.code) ||
        (a.code < b.code ? -1 : 1)
    )
}

function groupOf(findings: readonly Finding[]): FindingGroup {
  const [first] = findings
  if (first === undefined) throw new RangeError('a group of findings is never empty')
  const {code, severity, remedy, why} = first
  return {
    code,
    severity,
    findings,
    ...(findings.every((other) => other.remedy === remedy) && {remedy}),
    ...(findings.every((other) => other.why === why) && {why})
  }
}
