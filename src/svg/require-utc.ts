/** Any object of a compiled specification, as far as this check looks into it. */
type Node = Readonly<Record<string, unknown>>

/**
 * Refuses a compiled specification whose picture would depend on the time zone of the machine: scales of local
 * time, and time units that are not in UTC. In Vega-Lite a temporal channel needs `scale: {type: 'utc'}`, and a
 * time unit the prefix `utc`.
 *
 * @throws Error
 */
export function requireUtc(spec: object): void {
  inspect(spec as Node)
}

function inspect(node: Node): void {
  for (const scale of list(node.scales)) {
    if (scale.type === 'time') throw new Error(`scale '${String(scale.name)}' is in local time; use type utc`)
  }
  for (const source of list(node.data)) {
    for (const transform of list(source.transform)) {
      if (transform.type === 'timeunit' && transform.timezone !== 'utc') {
        throw new Error(`time unit of '${String(transform.field)}' is in local time; use the utc unit`)
      }
    }
  }
  for (const mark of list(node.marks)) inspect(mark)
}

function list(value: unknown): readonly Node[] {
  return Array.isArray(value) ? value : []
}
